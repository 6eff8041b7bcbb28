package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.IOException;
import java.sql.SQLException;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.catalina.connector.ClientAbortException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import tools.jackson.databind.json.JsonMapper;

class ProblemAdviceTest {

    private final Logger logger = (Logger) LoggerFactory.getLogger(ProblemAdvice.class);
    private final ListAppender<ILoggingEvent> logged = new ListAppender<>();
    private final ProblemAdvice advice = new ProblemAdvice(
            new ProblemWriter(JsonMapper.shared(), new DefaultListableBeanFactory().getBeanProvider(ErrorPage.class)));
    private final MockHttpServletRequest request = new MockHttpServletRequest("GET", "/api/v1/animals");

    @BeforeEach
    void listen() {
        logged.start();
        logger.addAppender(logged);
        logger.setLevel(Level.DEBUG);
    }

    @AfterEach
    void stop() {
        logger.detachAppender(logged);
        logger.setLevel(null);
    }

    static Stream<Exception> clientsThatLeft() {
        return Stream.of(
                new AsyncRequestNotUsableException("Response not usable after response errors."),
                new ClientAbortException(new IOException("Connection reset by peer")),
                new IOException("Broken pipe"),
                new IllegalStateException("cannot write", new ClientAbortException("Broken pipe")));
    }

    @ParameterizedTest
    @MethodSource("clientsThatLeft")
    void aClientThatLeftIsNoErrorAndGetsNoReply(Exception left) {
        assertThat(advice.problem(left, request)).isNull();
        assertThat(logged.list).extracting(ILoggingEvent::getLevel).containsExactly(Level.DEBUG);
    }

    static Stream<Exception> failures() {
        return Stream.of(
                new IllegalStateException("a mistake of ours"),
                new IOException("No space left on device"),
                new IllegalStateException(new SQLException("lost", "08006", new IOException("Broken pipe"))));
    }

    @ParameterizedTest
    @MethodSource("failures")
    void whatFailsHereIsStillAnError(Exception failure) {
        assertThat(Objects.requireNonNull(advice.problem(failure, request))
                        .getStatusCode()
                        .is5xxServerError())
                .isTrue();
        assertThat(logged.list).extracting(ILoggingEvent::getLevel).containsExactly(Level.ERROR);
    }

    @Test
    void theErrorOfADatabaseThatWentAwayAsksToRepeat() {
        Exception lost = new IllegalStateException(new SQLException("lost", "08006", new IOException("Broken pipe")));
        assertThat(Objects.requireNonNull(advice.problem(lost, request))
                        .getStatusCode()
                        .value())
                .isEqualTo(503);
    }
}
