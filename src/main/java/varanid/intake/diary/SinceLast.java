package varanid.intake.diary;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * How many days ago a thing last happened, as far as is known.
 *
 * @param atLeastDays the days up to this one, without a gap, on which it is known not to have happened; 0 where it may
 *     have happened today
 * @param atMostDays since it was last seen to happen; nothing where it never was
 * @param lastOn when that was
 */
public record SinceLast(long atLeastDays, Optional<Long> atMostDays, Optional<LocalDate> lastOn) {

    /**
     * @param entries that stand
     * @param what what an entry says of it: yes, no, or nothing
     * @param asOf later entries count for nothing
     */
    static SinceLast of(List<DiaryEntry> entries, Function<DiaryEntry, Optional<Boolean>> what, LocalDate asOf) {
        Set<LocalDate> yes = new HashSet<>();
        Set<LocalDate> no = new HashSet<>();
        for (DiaryEntry entry : entries) {
            if (!entry.localDate().isAfter(asOf)) {
                what.apply(entry).ifPresent(happened -> (happened ? yes : no).add(entry.localDate()));
            }
        }
        no.removeAll(yes);
        long without = 0;
        while (no.contains(asOf.minusDays(without))) {
            without++;
        }
        Optional<LocalDate> last = yes.stream().max(LocalDate::compareTo);
        return new SinceLast(without, last.map(day -> ChronoUnit.DAYS.between(day, asOf)), last);
    }

    /** Food that was not offered was not eaten either. */
    static SinceLast ate(List<DiaryEntry> entries, LocalDate asOf) {
        return of(entries, entry -> entry.ate().map(it -> it == Ate.ALL || it == Ate.SOME), asOf);
    }

    static SinceLast noticed(List<DiaryEntry> entries, Function<DiaryEntry, Optional<Noticed>> what, LocalDate asOf) {
        return of(
                entries,
                entry -> what.apply(entry).filter(it -> it != Noticed.NOT_SEEN).map(it -> it == Noticed.YES),
                asOf);
    }
}
