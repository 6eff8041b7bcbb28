package varanid.intake.platform.id;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Random;
import java.util.UUID;
import java.util.function.LongSupplier;
import org.junit.jupiter.api.Test;

class IdsTest {

    @Test
    void makesUuidsOfVersionSevenWithTheMillisecond() {
        UUID id = new Ids(at(() -> 0x017F22E279B0L), new Random(1)).next();
        // The millisecond is that of the example in RFC 9562, appendix A.6.
        assertThat(id.toString()).startsWith("017f22e2-79b0-7");
        assertThat(id.version()).isEqualTo(7);
        assertThat(id.variant()).isEqualTo(2);
    }

    @Test
    void onlyEverRisesThoughTheClockStandsStillOrStepsBack() {
        Random steps = new Random(2);
        long[] now = {1_000_000};
        Ids ids = new Ids(at(() -> now[0] += steps.nextInt(3) - 1), new Random(3));
        String last = "";
        for (int i = 0; i < 100_000; i++) {
            String next = ids.next().toString();
            assertThat(next).isGreaterThan(last);
            last = next;
        }
    }

    private static Clock at(LongSupplier millis) {
        return new Clock() {
            @Override
            public ZoneId getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }

            @Override
            public Instant instant() {
                return Instant.ofEpochMilli(millis.getAsLong());
            }
        };
    }
}
