package varanid.intake.platform.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.springframework.boot.web.server.PortInUseException;

class StartFailureReporterTest {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final StartFailureReporter reporter =
            new StartFailureReporter(new PrintStream(out, true, StandardCharsets.UTF_8));

    @Test
    void tellsAKnownFailureWhereverItLiesAmongTheCauses() {
        Exception failure = new IllegalStateException(
                "bean of the context", new RuntimeException(new CannotStart("The lamp is out.", "Change it.")));
        assertThat(reporter.reportException(failure)).isTrue();
        assertThat(told())
                .isEqualToNormalizingNewlines(
                        "\nVaranid Intake could not start.\n\nThe lamp is out.\n\nChange it.\n\n");
    }

    @Test
    void tellsATakenPortAndAnotherToTry() {
        assertThat(reporter.reportException(new IllegalStateException(new PortInUseException(8080))))
                .isTrue();
        assertThat(told())
                .contains("Port 8080 is already used by another program on this machine.")
                .contains("SERVER_PORT=8081");
    }

    @Test
    void leavesAnUnforeseenFailureToSpringBoot() {
        assertThat(reporter.reportException(new IllegalStateException("a fault of ours")))
                .isFalse();
        assertThat(told()).isEmpty();
    }

    private String told() {
        return out.toString(StandardCharsets.UTF_8);
    }
}
