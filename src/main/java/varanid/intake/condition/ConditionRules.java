package varanid.intake.condition;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The lines, and the words for what they ask.
 *
 * @param lines one or more
 * @param scatter the factor by which species differ from a line, above 1
 * @param shortestMillimetres no monitor is shorter, snout to vent
 * @param longestMillimetres nor longer
 * @param index how the scaled mass index is made
 * @param questions what to ask a person in each case
 * @param notice what is said beside every result
 */
public record ConditionRules(
        List<MassLine> lines,
        double scatter,
        double shortestMillimetres,
        double longestMillimetres,
        IndexRules index,
        Map<MassForLength.Place, String> questions,
        String notice) {

    /** @throws IllegalArgumentException where there is no line, no scatter, or a place without a question */
    public ConditionRules {
        lines = List.copyOf(lines);
        questions = Map.copyOf(new EnumMap<>(questions));
        if (lines.isEmpty() || scatter <= 1) {
            throw new IllegalArgumentException("a band needs a line and a scatter above 1");
        }
        if (!questions.keySet().containsAll(Set.of(MassForLength.Place.values()))) {
            throw new IllegalArgumentException("a place has no question");
        }
    }

    /**
     * @param slope of the standardised major axis between species
     * @param shortestOfLongest it compares two readings of one animal only where the shorter length is at least this
     *     share of the longer
     */
    public record IndexRules(double slope, double shortestOfLongest) {}
}
