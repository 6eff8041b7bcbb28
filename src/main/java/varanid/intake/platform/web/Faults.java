package varanid.intake.platform.web;

import java.util.ArrayList;
import java.util.List;

/** Collects everything wrong with a request, to refuse it once with all of it. */
public final class Faults {

    /** A body of the largest size can hold some 40,000 faults; nobody reads more than these. */
    static final int MOST_LISTED = 1_000;

    private final List<Fault> faults = new ArrayList<>();
    private int count;

    public void add(Fault fault) {
        count++;
        if (faults.size() < MOST_LISTED) {
            faults.add(fault);
        }
    }

    /** How many faults there are so far. */
    public int count() {
        return count;
    }

    /** @throws ProblemException 422 with every fault, where there is one */
    public void orThrow() {
        if (count > 0) {
            String detail =
                    count == 1 ? "One thing is wrong with the request." : count + " things are wrong with the request.";
            String more = count > faults.size() ? " The first " + faults.size() + " are listed." : "";
            throw new ProblemException(ProblemType.INVALID_REQUEST, detail + more, faults);
        }
    }
}
