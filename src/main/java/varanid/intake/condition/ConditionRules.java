package varanid.intake.condition;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * The lines, and the words for what they ask.
 *
 * @param lines one or more
 * @param scatter the factor by which species differ from a line, above 1
 * @param shortestMillimetres no monitor is shorter, snout to vent
 * @param longestMillimetres nor longer
 * @param daysApart by life stage, how many days may lie between a length and a mass set against each other
 * @param index how the scaled mass index is made
 * @param questions what to ask a person in each case
 * @param texts what is said of what cannot be compared
 * @param notice what is said beside every result
 */
public record ConditionRules(
        List<MassLine> lines,
        double scatter,
        double shortestMillimetres,
        double longestMillimetres,
        Map<String, Integer> daysApart,
        IndexRules index,
        Map<MassForLength.Place, String> questions,
        Map<Said, String> texts,
        String notice) {

    /** @throws IllegalArgumentException where there is no line, no scatter, or a place without a question */
    public ConditionRules {
        lines = List.copyOf(lines);
        daysApart = Map.copyOf(daysApart);
        questions = Map.copyOf(new EnumMap<>(questions));
        texts = Map.copyOf(new EnumMap<>(texts));
        if (lines.isEmpty() || scatter <= 1) {
            throw new IllegalArgumentException("a band needs a line and a scatter above 1");
        }
        if (!daysApart.containsKey("unknown") || !texts.keySet().containsAll(Set.of(Said.values()))) {
            throw new IllegalArgumentException("a text is missing, or the days for an unknown life stage");
        }
        if (!questions.keySet().containsAll(Set.of(MassForLength.Place.values()))) {
            throw new IllegalArgumentException("a place has no question");
        }
    }

    /**
     * @param slope of the standardised major axis between species
     * @param shortestOfLongest it compares two readings of one animal only where the shorter length is at least this
     *     share of the longer
     * @param daysApart how many days may lie between length and mass of one point
     */
    public record IndexRules(double slope, double shortestOfLongest, int daysApart) {}

    /** What is said beside a comparison, or instead of one. */
    public enum Said {
        NO_LENGTH,
        OLD_LENGTH,
        IMPOSSIBLE_LENGTH,
        INDEX,
        INDEX_TOO_FEW,
        INDEX_TOO_DIFFERENT;

        String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    int daysApart(String lifeStage) {
        Integer days = daysApart.get(lifeStage);
        return days != null ? days : Objects.requireNonNull(daysApart.get("unknown"));
    }

    String question(MassForLength.Place place) {
        return Objects.requireNonNull(questions.get(place));
    }

    String say(Said what) {
        return Objects.requireNonNull(texts.get(what));
    }
}
