package varanid.intake.platform.time;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * The moment a request is read at, and the zone its dates are meant in.
 *
 * @param now the moment, to the millisecond
 * @param zone the organisation's zone: a date is a date there
 */
public record Present(Instant now, ZoneId zone) {

    /** How far another clock may be ahead of ours before what it says is called the future. */
    public static final Duration CLOCKS_MAY_DIFFER_BY = Duration.ofMinutes(5);

    public static Present at(Clock clock, ZoneId zone) {
        return new Present(clock.instant(), zone);
    }

    public LocalDate today() {
        return LocalDate.ofInstant(now, zone);
    }

    /** Whether the instant is later than now and five minutes. */
    public boolean isFuture(Instant instant) {
        return instant.isAfter(now.plus(CLOCKS_MAY_DIFFER_BY));
    }

    /** Whether the date is tomorrow or later in the zone. */
    public boolean isFuture(LocalDate date) {
        return date.isAfter(today());
    }
}
