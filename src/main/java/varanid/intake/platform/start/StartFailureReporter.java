package varanid.intake.platform.start;

import java.io.PrintStream;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.SpringBootExceptionReporter;
import org.springframework.boot.web.server.PortInUseException;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;

/**
 * Tells a foreseen failure of the start on standard error, in plain words, instead of the log and the stack trace.
 * Everything else is left to Spring Boot. Registered in {@code META-INF/spring.factories}.
 */
@Order(Ordered.HIGHEST_PRECEDENCE)
final class StartFailureReporter implements SpringBootExceptionReporter {

    private final PrintStream out;

    /** Called by Spring Boot. */
    public StartFailureReporter(@Nullable ConfigurableApplicationContext context) {
        this(System.err);
    }

    StartFailureReporter(PrintStream out) {
        this.out = out;
    }

    @Override
    public boolean reportException(Throwable failure) {
        Optional<CannotStart> known = findKnown(failure);
        known.ifPresent(this::print);
        return known.isPresent();
    }

    private static Optional<CannotStart> findKnown(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof CannotStart cannotStart) {
                return Optional.of(cannotStart);
            }
            if (cause instanceof PortInUseException port) {
                return Optional.of(portTaken(port.getPort()));
            }
        }
        return Optional.empty();
    }

    private static CannotStart portTaken(int port) {
        return new CannotStart(
                "Port %d is already used by another program on this machine.".formatted(port),
                "Stop the other program, or choose another port with SERVER_PORT, for example SERVER_PORT=%d."
                        .formatted(port < 65535 ? port + 1 : port - 1));
    }

    private void print(CannotStart failure) {
        out.printf("%nVaranid Intake could not start.%n%n%s%n%n%s%n%n", failure.getMessage(), failure.whatToDo());
        out.flush();
    }
}
