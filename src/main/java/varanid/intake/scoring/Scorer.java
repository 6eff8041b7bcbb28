package varanid.intake.scoring;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Scores looks by one checklist. Has no state of its own: safe to share between threads. */
public final class Scorer {

    private final Checklist checklist;

    public Scorer(Checklist checklist) {
        this.checklist = checklist;
    }

    public Checklist checklist() {
        return checklist;
    }

    /**
     * How urgent and how apart, without the reasons.
     *
     * @throws LookRefused with every fault of the answers at once
     */
    public Decision decide(Circumstances circumstances, Map<String, Answer> answers) {
        if (circumstances.checklist != checklist) {
            throw new IllegalArgumentException("these circumstances were made for another checklist");
        }
        List<Fault> faults = new ArrayList<>(0);
        Reading reading = Reading.of(circumstances, answers, faults);
        if (!faults.isEmpty()) {
            throw new LookRefused(faults);
        }
        return new Decision(reading, Bounds.of(reading));
    }

    /**
     * The whole result: the decision, what it rests on, what is unknown and what to look at next.
     *
     * @throws LookRefused with every fault of the look at once
     */
    public Result score(Look look) {
        List<Fault> faults = new ArrayList<>();
        Circumstances circumstances =
                Circumstances.read(checklist, look.attributes(), look.conditions(), look.explainedBefore(), faults);
        Reading reading = Reading.of(circumstances, look.answers(), faults);
        if (!faults.isEmpty()) {
            throw new LookRefused(faults);
        }
        return new ResultWriter(reading).write();
    }

    /**
     * What every finding of the look stands for.
     *
     * @throws LookRefused with every fault of the look at once
     */
    public LookReading read(Look look) {
        List<Fault> faults = new ArrayList<>();
        Circumstances circumstances =
                Circumstances.read(checklist, look.attributes(), look.conditions(), look.explainedBefore(), faults);
        Reading reading = Reading.of(circumstances, look.answers(), faults);
        if (!faults.isEmpty()) {
            throw new LookRefused(faults);
        }
        return new LookReading(reading);
    }

    /** Every fault of a look; empty when it can be scored. */
    public List<Fault> faultsOf(Look look) {
        List<Fault> faults = new ArrayList<>();
        Circumstances circumstances =
                Circumstances.read(checklist, look.attributes(), look.conditions(), look.explainedBefore(), faults);
        Reading.of(circumstances, look.answers(), faults);
        return faults;
    }
}
