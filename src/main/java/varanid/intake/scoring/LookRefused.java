package varanid.intake.scoring;

import java.util.List;

/** A look that the checklist cannot read, with every fault that was found. Nothing of it is scored. */
public final class LookRefused extends RuntimeException {

    private static final long serialVersionUID = 1L;
    private final transient List<Fault> faults;

    public LookRefused(List<Fault> faults) {
        super(String.join("\n", faults.stream().map(Fault::toString).toList()));
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }
}
