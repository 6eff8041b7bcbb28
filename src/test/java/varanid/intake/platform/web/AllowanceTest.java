package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class AllowanceTest {

    private static final Instant START = Instant.parse("2027-01-01T00:00:00Z");

    private final HandClock clock = new HandClock();
    private final Allowance<Object> allowance = new Allowance<>(clock, 3, Duration.ofSeconds(10));

    @Test
    void givesSoManyAtOnceThenOneEachSoOften() {
        useUp("a");
        assertThat(allowance.take("a")).contains(Duration.ofSeconds(10));
        clock.now = START.plusSeconds(4);
        assertThat(allowance.take("a")).contains(Duration.ofSeconds(6));
        clock.now = START.plusSeconds(10);
        assertThat(allowance.take("a")).isEmpty();
        assertThat(allowance.take("a")).contains(Duration.ofSeconds(10));
        clock.now = START.plusSeconds(3600);
        useUp("a");
        assertThat(allowance.take("a")).isPresent();
    }

    @Test
    void countsForEachKeyByItself() {
        useUp("a");
        assertThat(allowance.take("b")).isEmpty();
    }

    @Test
    void shutsNobodyOutWhenTheClockIsPutBack() {
        useUp("a");
        clock.now = START.minusSeconds(86_400);
        assertThat(allowance.take("a")).isEmpty();
    }

    @Test
    void forgetsWhoAskedLongestAgoWhenThereAreTooMany() {
        useUp("a");
        for (int i = 0; i < 10_000; i++) {
            allowance.take(i);
        }
        assertThat(allowance.take("a")).isEmpty();
    }

    private void useUp(Object key) {
        for (int i = 0; i < 3; i++) {
            assertThat(allowance.take(key)).isEmpty();
        }
    }

    private static final class HandClock extends Clock {

        private Instant now = START;

        @Override
        public Instant instant() {
            return now;
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
}
