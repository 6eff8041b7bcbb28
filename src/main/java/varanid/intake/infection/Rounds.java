package varanid.intake.infection;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Freedom over rounds of sampling, when infection may be brought in between them.
 *
 * <p>Each round first discounts what was believed by the risk of introduction, then learns from the round's negative
 * result: Martin, Cameron and Greiner 2007. Specificity is taken as 1: a positive is followed up until it is settled.
 *
 * @param introduction the probability that infection is brought in from one round to the next, 0 to 1
 * @param sensitivity the probability that a round finds an infection that is there, 0 to 1
 */
public record Rounds(double introduction, double sensitivity) {

    /** @throws IllegalArgumentException where one of them lies outside 0 to 1 */
    public Rounds {
        Numbers.fraction("the risk of introduction", introduction);
        Numbers.fraction("the sensitivity", sensitivity);
    }

    /** What one more negative round makes of the freedom believed after the last. */
    public Round next(double freedom) {
        double discounted = Numbers.fraction("freedom", freedom) * (1 - introduction);
        double missed = (1 - discounted) * (1 - sensitivity);
        return new Round(discounted, discounted + missed == 0 ? 0 : discounted / (discounted + missed));
    }

    /** So many negative rounds, one after the other. */
    public List<Round> series(double freedom, int rounds) {
        List<Round> series = new ArrayList<>();
        double before = freedom;
        for (int i = 0; i < Numbers.atLeast(0, "the number of rounds", rounds); i++) {
            Round round = next(before);
            series.add(round);
            before = round.after();
        }
        return List.copyOf(series);
    }

    /** What it comes to in the long run; nothing where more is brought in than rounds find. */
    public Optional<Round> longRun() {
        return sensitivity > introduction
                ? Optional.of(new Round(
                        1 - introduction / sensitivity, (1 - introduction / sensitivity) / (1 - introduction)))
                : Optional.empty();
    }

    /**
     * How much sensitivity a round needs so that freedom stays at least so probable in the long run.
     *
     * @param target the probability of freedom after a round, between 0 and 1
     */
    public static double leastSensitivity(double introduction, double target) {
        Numbers.fraction("the risk of introduction", introduction);
        Numbers.openFraction("the target", target);
        return introduction / (1 - target * (1 - introduction));
    }

    /**
     * One round.
     *
     * @param before probability of freedom before its result, the risk of introduction taken off
     * @param after probability of freedom after its negative result
     */
    public record Round(double before, double after) {}
}
