package varanid.intake.service;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import org.springframework.context.annotation.Primary;
import org.springframework.stereotype.Component;

/**
 * The machine's clock, moved by as much as a test says, and back again after. All of a run can be moved with {@code
 * -Dclock.ahead=PT5H}: no test may depend on the hour it is run at.
 */
@Component
@Primary
public class MovableClock extends Clock {

    private static final Duration AHEAD_ALWAYS = Duration.parse(System.getProperty("clock.ahead", "PT0S"));

    private volatile Duration ahead = Duration.ZERO;

    /** Does something as if it were that much later. */
    public void later(Duration by, Runnable something) {
        ahead = by;
        try {
            something.run();
        } finally {
            ahead = Duration.ZERO;
        }
    }

    @Override
    public Instant instant() {
        return Clock.systemUTC().instant().plus(AHEAD_ALWAYS).plus(ahead).truncatedTo(ChronoUnit.MILLIS);
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException();
    }
}
