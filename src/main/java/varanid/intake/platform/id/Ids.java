package varanid.intake.platform.id;

import java.security.SecureRandom;
import java.time.Clock;
import java.util.UUID;
import java.util.random.RandomGenerator;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/**
 * Makes ids: UUIDs of version 7, RFC 9562 section 5.7, with the counter of its section 6.2, method 1.
 *
 * <p>48 bits of Unix milliseconds, 12 bits of counter, 62 random bits. Ids of one instance only ever rise, also within
 * a millisecond and when the clock steps back: then the last millisecond is kept, and where its counter is used up the
 * next one is borrowed.
 */
@Component
public class Ids {

    private static final int COUNTER_LIMIT = 1 << 12;

    private final Clock clock;
    private final RandomGenerator random;
    private long lastMillisecond = -1;
    private int counter;

    @Autowired
    public Ids(Clock clock) {
        this(clock, new SecureRandom());
    }

    Ids(Clock clock, RandomGenerator random) {
        this.clock = clock;
        this.random = random;
    }

    /** A new id, greater (as an unsigned number, and as text) than every id this instance made before. */
    public UUID next() {
        long millisecond;
        int count;
        synchronized (this) {
            long now = clock.millis();
            if (now > lastMillisecond) {
                lastMillisecond = now;
                // Half of the counter's range is left free to count in.
                counter = random.nextInt(COUNTER_LIMIT / 2);
            } else if (++counter == COUNTER_LIMIT) {
                lastMillisecond++;
                counter = 0;
            }
            millisecond = lastMillisecond;
            count = counter;
        }
        long high = (millisecond << 16) | 0x7000L | count;
        long low = (random.nextLong() & 0x3FFF_FFFF_FFFF_FFFFL) | 0x8000_0000_0000_0000L;
        return new UUID(high, low);
    }
}
