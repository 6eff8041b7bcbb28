package varanid.intake.platform.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * So many requests at once for each key, and another one each so often. Kept in memory: a restart forgets it, and each
 * instance counts for itself; it spares the database and guards no secret.
 *
 * @param <K> who or what is counted
 */
public final class Allowance<K> {

    private static final int MOST_KEYS = 10_000;

    private final Clock clock;
    private final Duration between;
    private final Duration most;

    /** When a key that asks no more has its whole allowance again. The one that asked longest ago is forgotten first. */
    private final Map<K, Instant> fullAt = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<K, Instant> eldest) {
            return size() > MOST_KEYS;
        }
    };

    public Allowance(Clock clock, int atOnce, Duration between) {
        this.clock = clock;
        this.between = between;
        this.most = between.multipliedBy(atOnce);
    }

    /** Takes one; where there is none left, says how long to wait for the next. */
    public synchronized Optional<Duration> take(K key) {
        Instant now = clock.instant();
        Instant full = fullAt.getOrDefault(key, now);
        // Later than ever possible: the clock was put back.
        if (full.isBefore(now) || full.isAfter(now.plus(most))) {
            full = now;
        }
        Instant after = full.plus(between);
        Duration wait = Duration.between(now.plus(most), after);
        if (wait.compareTo(Duration.ZERO) > 0) {
            return Optional.of(wait);
        }
        fullAt.put(key, after);
        return Optional.empty();
    }
}
