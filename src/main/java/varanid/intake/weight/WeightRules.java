package varanid.intake.weight;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * What counts as a change of weight worth a word, as the data says.
 *
 * @param heavyFor how long after a meal an animal may weigh more than it is
 * @param slope how a slope is made
 * @param answer how the checklist is answered
 * @param doubt which weighing is asked about
 * @param thresholds the most urgent first
 * @param texts what each caveat means to a person
 * @param advice what to do next, in words
 * @param sources what the letters of a source stand for
 */
public record WeightRules(
        Duration heavyFor,
        SlopeRules slope,
        AnswerRules answer,
        DoubtRules doubt,
        List<Threshold> thresholds,
        Map<Caveat, String> texts,
        Map<Advice, String> advice,
        Map<String, String> sources) {

    /** @throws IllegalArgumentException where a caveat has no text or a threshold names no known source */
    public WeightRules {
        thresholds = List.copyOf(thresholds);
        texts = Map.copyOf(new EnumMap<>(texts));
        advice = Map.copyOf(new EnumMap<>(advice));
        sources = Map.copyOf(sources);
        if (!advice.keySet().containsAll(Set.of(Advice.values()))) {
            throw new IllegalArgumentException("an advice has no text");
        }
        if (!texts.keySet().containsAll(Set.of(Caveat.values()))) {
            throw new IllegalArgumentException("a caveat has no text");
        }
        for (Threshold each : thresholds) {
            if (each.source().isEmpty() || !sources.keySet().containsAll(each.source())) {
                throw new IllegalArgumentException("no known source: " + each.id());
            }
        }
    }

    /**
     * @param weighingDays from how many different days on a slope is shown
     * @param intervalFrom from how many on with an interval
     * @param confidence of the interval, such as 0.95
     * @param longestDays how far back it goes
     * @param heavyShareBelow it asserts nothing where this share of its readings, or more, may be heavy
     * @param method how it is made, in words
     */
    public record SlopeRules(
            int weighingDays,
            int intervalFrom,
            double confidence,
            int longestDays,
            double heavyShareBelow,
            String method) {}

    /**
     * @param factor heavier or lighter by more than this
     * @param withinDays than the nearest weighing, where that is so near
     * @param text what is asked
     */
    public record DoubtRules(BigDecimal factor, int withinDays, String text) {}

    /** What a keeper can do next. The words are in the data. */
    public enum Advice {
        /** There is no weighing. */
        FIRST_WEIGHING,
        /** There is one, and the next is not due. */
        SECOND_WEIGHING,
        /** A threshold is past. */
        PAST,
        /** Nothing special: the weekly weighing. */
        GO_ON;

        String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * @param lowestPercent the lowest change the checklist takes
     * @param highestPercent the highest
     * @param longestDays the longest time between two weighings that it takes
     * @param dueAfterDays the second weighing is due so many days after the first
     * @param staleAfterDays a weighing older than this says nothing of today
     */
    public record AnswerRules(
            BigDecimal lowestPercent,
            BigDecimal highestPercent,
            int longestDays,
            int dueAfterDays,
            int staleAfterDays) {}

    /**
     * A change that matters.
     *
     * @param id its code
     * @param atMostPercent it is past when the whole interval is this or lower: -5 for a loss of 5 %, 0 for no gain
     * @param atLeastDays only references at least so many days old count
     * @param withinDays only references at most so many days old count
     * @param lifeStages codes of the life stages it is for; all where empty
     * @param urgency how soon a vet, as the checklist's outcomes name it
     * @param text the same in words
     * @param source letters of its sources
     */
    public record Threshold(
            String id,
            BigDecimal atMostPercent,
            int atLeastDays,
            int withinDays,
            List<String> lifeStages,
            String urgency,
            String text,
            List<String> source) {

        public Threshold {
            lifeStages = List.copyOf(lifeStages);
            source = List.copyOf(source);
            if (atLeastDays < 1 || atLeastDays > withinDays) {
                throw new IllegalArgumentException(
                        "no days lie between " + atLeastDays + " and " + withinDays + ": " + id);
            }
        }

        boolean isFor(String lifeStage) {
            return lifeStages.isEmpty() || lifeStages.contains(lifeStage);
        }

        boolean takes(int overDays) {
            return overDays >= atLeastDays && overDays <= withinDays;
        }
    }
}
