package varanid.intake.scoring;

import java.util.List;
import java.util.stream.Collectors;

/** A checklist that would break the laws of scoring, with every fault that was found. */
public final class ChecklistRefused extends RuntimeException {

    private static final long serialVersionUID = 1L;
    private final transient List<Fault> faults;

    public ChecklistRefused(String name, List<Fault> faults) {
        super(faults.stream()
                .map(Fault::toString)
                .collect(Collectors.joining(
                        "\n  ",
                        "The checklist " + name + " is refused, " + faults.size()
                                + (faults.size() == 1 ? " fault:\n  " : " faults:\n  "),
                        "")));
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }
}
