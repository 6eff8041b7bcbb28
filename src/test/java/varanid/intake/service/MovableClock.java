package varanid.intake.service;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import org.springframework.context.annotation.Primary;
import org.springframework.stereotype.Component;

/** The machine's clock, moved by as much as a test says, and back again after. */
@Component
@Primary
public class MovableClock extends Clock {

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
        return Clock.systemUTC().instant().plus(ahead).truncatedTo(ChronoUnit.MILLIS);
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
