package varanid.intake.weight;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What the readings say about one threshold. */
public sealed interface Judged {

    /** The threshold. */
    WeightRules.Threshold threshold();

    /** The whole interval is past it. */
    record Past(WeightRules.Threshold threshold, TrendEvidence evidence) implements Judged {}

    /** No reading allows that it is past; what is shown reaches back furthest. */
    record NotPast(WeightRules.Threshold threshold, TrendEvidence evidence) implements Judged {}

    /**
     * The readings allow both, or there are none to compare.
     *
     * @param why what stands in the way, at least one
     * @param evidence the comparison that leaves it open, if there is one
     */
    record CannotTell(WeightRules.Threshold threshold, List<Caveat> why, Optional<TrendEvidence> evidence)
            implements Judged {

        public CannotTell {
            why = List.copyOf(why);
            if (why.isEmpty()) {
                throw new IllegalArgumentException("nothing stands in the way");
            }
        }
    }

    /** The one place where the kinds are told apart. */
    default <T> T fold(Function<Past, T> past, Function<NotPast, T> notPast, Function<CannotTell, T> cannotTell) {
        if (this instanceof Past it) {
            return past.apply(it);
        }
        return this instanceof NotPast it ? notPast.apply(it) : cannotTell.apply((CannotTell) this);
    }
}
