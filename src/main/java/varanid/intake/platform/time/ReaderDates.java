package varanid.intake.platform.time;

import com.ibm.icu.text.DateTimePatternGenerator;
import com.ibm.icu.util.ULocale;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Days and moments as a reader writes them: which part comes first, 24 hours or twelve. The order is that of the reader's
 * region, the words are those of the language that the texts are in. The month is always a word: of 03/04 nobody knows
 * which is which.
 *
 * <p>The patterns are those of the Unicode CLDR (UTS #35, "Date Field Symbols" and skeletons), by ICU.
 */
public final class ReaderDates {

    /** What paper has, which goes from hand to hand and has no one reader. */
    public static final ReaderDates PAPER = new ReaderDates(Locale.UK);

    private static final Map<Locale, ReaderDates> KNOWN = new ConcurrentHashMap<>();

    private final DateTimeFormatter day;
    private final DateTimeFormatter shortDay;
    private final DateTimeFormatter dayOfYear;
    private final DateTimeFormatter weekday;
    private final DateTimeFormatter moment;
    private final DateTimeFormatter shortMoment;
    private final DateTimeFormatter weekdayMoment;

    private ReaderDates(Locale locale) {
        DateTimePatternGenerator patterns = DateTimePatternGenerator.getInstance(ULocale.forLocale(locale));
        this.day = formatter(patterns, "yMMMMd", locale);
        this.shortDay = formatter(patterns, "yMMMd", locale);
        this.dayOfYear = formatter(patterns, "MMMMd", locale);
        this.weekday = formatter(patterns, "yMMMMEEEEd", locale);
        this.moment = formatter(patterns, "yMMMMdjmm", locale);
        this.shortMoment = formatter(patterns, "yMMMdjmm", locale);
        this.weekdayMoment = formatter(patterns, "MMMMEEEEdjmm", locale);
    }

    private static DateTimeFormatter formatter(DateTimePatternGenerator patterns, String skeleton, Locale locale) {
        return DateTimeFormatter.ofPattern(patterns.getBestPattern(skeleton), locale);
    }

    /** @param locale the language of the texts and the reader's region */
    public static ReaderDates of(Locale locale) {
        return KNOWN.computeIfAbsent(locale, ReaderDates::new);
    }

    /** Such as 14 March 2026. */
    public String day(LocalDate day) {
        return this.day.format(day);
    }

    /** Such as 14 Mar 2026. */
    public String shortDay(LocalDate day) {
        return shortDay.format(day);
    }

    /** Without its year, such as 14 March. */
    public String dayOfYear(LocalDate day) {
        return dayOfYear.format(day);
    }

    /** Such as Saturday, 14 March 2026. */
    public String weekday(LocalDate day) {
        return weekday.format(day);
    }

    /** Such as 14 March 2026, 07:40. */
    public String moment(Instant at, ZoneId zone) {
        return moment.format(at.atZone(zone));
    }

    /** Such as 14 Mar 2026, 07:40. */
    public String shortMoment(Instant at, ZoneId zone) {
        return shortMoment.format(at.atZone(zone));
    }

    /** Without its year, such as Saturday 14 March, 07:40. */
    public String weekdayMoment(Instant at, ZoneId zone) {
        return weekdayMoment.format(at.atZone(zone));
    }
}
