package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Which way demeanour went over some days. Only the order of the words counts, never how far apart they are; one odd day
 * changes little.
 *
 * @param direction what may be said
 * @param days how many days had a word on the scale
 * @param calmerPairs of every two of those days, how often the later one was calmer
 * @param moreFearfulPairs how often it was more fearful
 * @param alikePairs how often they were alike
 */
public record DemeanourTrend(Direction direction, int days, int calmerPairs, int moreFearfulPairs, int alikePairs) {

    public enum Direction {
        CALMER("calmer"),
        MORE_FEARFUL("more-fearful"),
        NO_CLEAR_CHANGE("no-clear-change"),
        /** Too few days. */
        CANNOT_TELL("cannot-tell");

        private final String code;

        Direction(String code) {
            this.code = code;
        }

        @JsonValue
        public String code() {
            return code;
        }
    }

    /**
     * @param byDay the word of each day, in order, all on the scale
     */
    static DemeanourTrend of(List<Demeanour> byDay, DemeanourRules.Trend rules) {
        int calmer = 0;
        int moreFearful = 0;
        int alike = 0;
        for (int i = 0; i < byDay.size(); i++) {
            for (int j = i + 1; j < byDay.size(); j++) {
                int way = byDay.get(j).compareTo(byDay.get(i));
                calmer += way < 0 ? 1 : 0;
                moreFearful += way > 0 ? 1 : 0;
                alike += way == 0 ? 1 : 0;
            }
        }
        double share = rules.clearShare() * (calmer + moreFearful + alike);
        Direction direction = Direction.NO_CLEAR_CHANGE;
        if (byDay.size() < rules.fewestDays()) {
            direction = Direction.CANNOT_TELL;
        } else if (calmer - moreFearful >= share) {
            direction = Direction.CALMER;
        } else if (moreFearful - calmer >= share) {
            direction = Direction.MORE_FEARFUL;
        }
        return new DemeanourTrend(direction, byDay.size(), calmer, moreFearful, alike);
    }

    /** The most fearful word of each day from one to another that has a word on the scale, in order. */
    static TreeMap<LocalDate, Demeanour> byDay(List<DiaryEntry> entries, LocalDate from, LocalDate to) {
        TreeMap<LocalDate, Demeanour> byDay = new TreeMap<>();
        for (DiaryEntry entry : entries) {
            LocalDate day = entry.localDate();
            entry.demeanour()
                    .filter(word -> word.isOnScale() && !day.isBefore(from) && !day.isAfter(to))
                    .ifPresent(word -> byDay.merge(day, word, (a, b) -> a.isAtLeast(b) ? a : b));
        }
        return byDay;
    }

    /** Whether it is calm on the last of these days, and was fearful on each of those just before. */
    static boolean isSuddenlyCalm(Map<LocalDate, Demeanour> byDay, DemeanourRules.SuddenlyCalm rules) {
        List<Demeanour> words = new ArrayList<>(byDay.values());
        int last = words.size() - 1;
        return last >= rules.daysBefore()
                && words.get(last) == Demeanour.CALM
                && words.subList(last - rules.daysBefore(), last).stream().allMatch(it -> it.isAtLeast(rules.before()));
    }

    /** The word that steers housing: the most fearful of these days, nothing where no day has one. */
    static Optional<Demeanour> mostFearful(Map<LocalDate, Demeanour> byDay) {
        return byDay.values().stream().max(Demeanour::compareTo);
    }
}
