package varanid.intake.platform.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Dates as they are written where the reader is: day before month in Britain, Germany and Australia, month before day in
 * the United States (common practice, and the Unicode CLDR for those locales).
 */
class ReaderDatesTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 14);
    private static final Instant MOMENT = Instant.parse("2026-03-14T15:40:00Z");
    private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "GB | 14 March 2026 | 14 Mar 2026 | 14 March",
                "DE | 14 March 2026 | 14 Mar 2026 | 14 March",
                "AU | 14 March 2026 | 14 Mar 2026 | 14 March",
                "US | March 14, 2026 | Mar 14, 2026 | March 14",
            })
    void theRegionDecidesWhatComesFirst(String region, String day, String shortDay, String dayOfYear) {
        ReaderDates dates = ReaderDates.of(new Locale("en", region));
        assertThat(dates.day(DAY)).isEqualTo(day);
        assertThat(dates.shortDay(DAY)).isEqualTo(shortDay);
        assertThat(dates.dayOfYear(DAY)).isEqualTo(dayOfYear);
    }

    @Test
    void theRegionDecidesHowTheHourIsWritten() {
        assertThat(ReaderDates.of(Locale.UK).shortMoment(MOMENT, LISBON)).isEqualTo("14 Mar 2026, 15:40");
        assertThat(ReaderDates.of(Locale.US).shortMoment(MOMENT, LISBON)).isEqualTo("Mar 14, 2026, 3:40\u202FPM");
        assertThat(ReaderDates.of(Locale.UK).moment(MOMENT, LISBON))
                .contains("14 March 2026")
                .endsWith("15:40");
        assertThat(ReaderDates.of(Locale.UK).weekday(DAY))
                .startsWith("Saturday")
                .endsWith("14 March 2026");
        assertThat(ReaderDates.of(Locale.UK).weekdayMoment(MOMENT, LISBON))
                .startsWith("Saturday")
                .contains("14 March")
                .endsWith("15:40");
    }
}
