package varanid.intake.diary;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * What demeanour says about housing, and when it asks for a look, as the data says.
 *
 * @param words every demeanour, the scale from calm to frantic first
 * @param recentDays the advice goes by the last so many days
 * @param sources what the letters of a source stand for
 */
record DemeanourRules(
        List<Word> words,
        Trend trend,
        int recentDays,
        SuddenlyCalm suddenlyCalm,
        List<Advice> advice,
        List<LookNow> lookNow,
        Map<String, String> sources) {

    static final String DULL = "dull";
    static final String MITE_SEEN = "mite-seen";
    static final String SUDDENLY_CALM = "suddenly-calm";

    /** @throws IllegalArgumentException where the parts do not fit together, naming all that does not */
    DemeanourRules {
        words = List.copyOf(words);
        advice = List.copyOf(advice);
        lookNow = List.copyOf(lookNow);
        sources = Map.copyOf(sources);
        Set<String> faults = new TreeSet<>();
        if (!words.stream().map(Word::code).toList().equals(List.of(Demeanour.values()))) {
            faults.add("the scale is not the one that entries are written in");
        }
        for (String id : List.of(DULL, MITE_SEEN, SUDDENLY_CALM)) {
            if (lookNow.stream().filter(each -> each.id().equals(id)).count() != 1) {
                faults.add("not exactly one reason to look now for " + id);
            }
        }
        if (advice.stream().map(Advice::id).distinct().count() != advice.size()) {
            faults.add("an advice is there twice");
        }
        if (!suddenlyCalm.before().isOnScale() || suddenlyCalm.daysBefore() < 1 || recentDays < 1) {
            faults.add("suddenlyCalm or recentDays means nothing");
        }
        if (trend.fewestDays() < 2 || trend.windowDays() < trend.fewestDays() || trend.clearShare() <= 0) {
            faults.add("the trend can never be told");
        }
        Set<String> known = sources.keySet();
        Stream.of(
                        advice.stream().map(Advice::source),
                        lookNow.stream().map(LookNow::source),
                        Stream.of(trend.source(), suddenlyCalm.source()))
                .flatMap(each -> each)
                .filter(named -> named.isEmpty() || !known.containsAll(named))
                .forEach(named -> faults.add("no known source in " + named));
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", faults));
        }
    }

    record Word(Demeanour code, String label, String meaning) {}

    /**
     * @param clearShare which part of all pairs of days must go one way, the opposite ones taken off
     * @param method in words, for people
     */
    record Trend(int windowDays, int fewestDays, double clearShare, String method, List<String> source) {}

    /** So many days in a row that were at least this fearful, before one that is calm. */
    record SuddenlyCalm(Demeanour before, int daysBefore, List<String> source) {}

    /** An empty list fits everything. */
    record Advice(
            String id,
            Set<Demeanour> demeanour,
            Set<String> lifeStages,
            Set<DemeanourTrend.Direction> trend,
            String text,
            List<String> source) {

        Advice {
            demeanour = Set.copyOf(demeanour);
            lifeStages = Set.copyOf(lifeStages);
            trend = Set.copyOf(trend);
        }

        boolean fits(Set<Demeanour> recent, String lifeStage, DemeanourTrend.Direction direction) {
            return (demeanour.isEmpty() || demeanour.stream().anyMatch(recent::contains))
                    && (lifeStages.isEmpty() || lifeStages.contains(lifeStage))
                    && (trend.isEmpty() || trend.contains(direction));
        }
    }

    record LookNow(String id, String text, List<String> source) {}

    LookNow getLookNow(String id) {
        return lookNow.stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow();
    }
}
