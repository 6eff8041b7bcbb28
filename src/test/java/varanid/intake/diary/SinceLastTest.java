package varanid.intake.diary;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SinceLastTest {

    private static final LocalDate FIRST = LocalDate.of(2026, 3, 1);

    /** Day by day up to the one that is asked for: y yes, n no, b both, - nothing, ? not seen. */
    @ParameterizedTest
    @CsvSource({
        "ynnn, 3, 3",
        "yn-n, 1, 3",
        "ynn-, 0, 3",
        "ynn?, 0, 3",
        "yyyy, 0, 0",
        "ynnb, 0, 0",
        "nnnn, 4, never",
        "-nnn, 3, never",
        "----, 0, never",
        "y, 0, 0",
    })
    void knowsHowLongAgoItMayHaveBeen(String days, long atLeast, String atMost) {
        SinceLast since = SinceLast.noticed(entries(days), DiaryEntry::drank, FIRST.plusDays(days.length() - 1L));
        assertThat(since.atLeastDays()).isEqualTo(atLeast);
        assertThat(since.atMostDays().map(String::valueOf).orElse("never")).isEqualTo(atMost);
    }

    @Test
    void countsNoEntryAfterTheDayThatIsAskedFor() {
        SinceLast since = SinceLast.noticed(entries("ynny"), DiaryEntry::drank, FIRST.plusDays(2));
        assertThat(since).isEqualTo(new SinceLast(2, Optional.of(2L), Optional.of(FIRST)));
    }

    @Test
    void countsFoodThatWasNotOfferedAsNotEaten() {
        List<DiaryEntry> entries = List.of(
                entry(0, Optional.of(Ate.SOME), Optional.empty()),
                entry(1, Optional.of(Ate.NOT_OFFERED), Optional.empty()),
                entry(2, Optional.of(Ate.NONE), Optional.empty()));
        assertThat(SinceLast.ate(entries, FIRST.plusDays(2)))
                .isEqualTo(new SinceLast(2, Optional.of(2L), Optional.of(FIRST)));
    }

    @Test
    void holdsTheTruthWhateverWasNotWrittenDown() {
        Random random = new Random(41);
        for (int n = 0; n < 2_000; n++) {
            int length = 1 + random.nextInt(12);
            int last = -1;
            StringBuilder written = new StringBuilder();
            for (int day = 0; day < length; day++) {
                boolean happened = random.nextInt(4) == 0;
                last = happened ? day : last;
                int told = random.nextInt(3);
                written.append(told == 0 ? '-' : told == 1 ? '?' : happened ? 'y' : 'n');
            }
            SinceLast since =
                    SinceLast.noticed(entries(written.toString()), DiaryEntry::drank, FIRST.plusDays(length - 1L));
            long truth = last < 0 ? length : length - 1 - last;
            assertThat(since.atLeastDays()).as("%s", written).isLessThanOrEqualTo(truth);
            since.atMostDays()
                    .ifPresent(atMost -> assertThat(atMost).as("%s", written).isGreaterThanOrEqualTo(truth));
        }
    }

    private static List<DiaryEntry> entries(String days) {
        List<DiaryEntry> entries = new ArrayList<>();
        for (int day = 0; day < days.length(); day++) {
            switch (days.charAt(day)) {
                case 'y' -> entries.add(entry(day, Optional.empty(), Optional.of(Noticed.YES)));
                case 'n' -> entries.add(entry(day, Optional.empty(), Optional.of(Noticed.NO)));
                case '?' -> entries.add(entry(day, Optional.empty(), Optional.of(Noticed.NOT_SEEN)));
                case 'b' -> {
                    entries.add(entry(day, Optional.empty(), Optional.of(Noticed.YES)));
                    entries.add(entry(day, Optional.empty(), Optional.of(Noticed.NO)));
                }
                default -> {
                    // nobody wrote anything
                }
            }
        }
        return entries;
    }

    private static DiaryEntry entry(int day, Optional<Ate> ate, Optional<Noticed> drank) {
        Instant at = FIRST.plusDays(day).atStartOfDay(ZoneOffset.UTC).toInstant();
        return new DiaryEntry(
                new UUID(0, 1),
                new UUID(0, 2),
                new UUID(0, 3),
                at,
                at,
                FIRST.plusDays(day),
                ate,
                Optional.empty(),
                drank,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Cleaning.NONE,
                MiteCheck.NOT_LOOKED,
                Optional.empty());
    }
}
