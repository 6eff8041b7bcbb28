package varanid.intake.platform.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class PresentTest {

    private static final Instant NOW = Instant.parse("2026-03-09T23:30:00Z");

    @Test
    void forgivesFiveMinutesOfAnotherClock() {
        Present present = new Present(NOW, ZoneId.of("UTC"));
        assertThat(present.isFuture(NOW.plusSeconds(300))).isFalse();
        assertThat(present.isFuture(NOW.plusSeconds(300).plusMillis(1))).isTrue();
    }

    @Test
    void hasTheDateOfTheOrganisationsZone() {
        LocalDate tenth = LocalDate.of(2026, 3, 10);
        assertThat(new Present(NOW, ZoneId.of("UTC")).isFuture(tenth)).isTrue();
        assertThat(new Present(NOW, ZoneId.of("Europe/Berlin")).isFuture(tenth)).isFalse();
    }
}
