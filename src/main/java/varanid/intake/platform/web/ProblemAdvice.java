package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ResponseEntity;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.web.ErrorResponse;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.util.DisconnectedClientHelper;

/** Makes a problem of whatever ends a request early. */
@RestControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class ProblemAdvice {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

    private final ProblemWriter writer;

    ProblemAdvice(ProblemWriter writer) {
        this.writer = writer;
    }

    /**
     * Nothing where the client has left: nobody reads an answer, and nothing here went wrong. A database that breaks its
     * pipe is no client.
     */
    @ExceptionHandler
    @Nullable
    ResponseEntity<byte[]> problem(Exception exception, HttpServletRequest request) {
        if (DisconnectedClientHelper.isClientDisconnectedException(exception) && !isLostConnection(exception)) {
            LOG.debug("{} {}: the client left", request.getMethod(), Requests.shownPath(request), exception);
            return null;
        }
        return writer.entity(translate(exception, request), request);
    }

    private static ProblemException translate(Exception exception, HttpServletRequest request) {
        if (exception instanceof ProblemException problem) {
            return problem;
        } else if (exception instanceof MethodArgumentTypeMismatchException) {
            // An id in the path that is no id names nothing.
            return ProblemException.notFound("thing");
        } else if (exception instanceof HttpRequestMethodNotSupportedException method) {
            return methodNotAllowed(method);
        } else if (exception instanceof HttpMediaTypeNotAcceptableException notAcceptable) {
            return new ProblemException(
                    ProblemType.NOT_ACCEPTABLE, "Available here: " + notAcceptable.getSupportedMediaTypes() + ".");
        } else if (exception instanceof OptimisticLockingFailureException) {
            return new ProblemException(
                    ProblemType.STALE, "Somebody else changed it at the same moment; read it again.");
        } else if (exception instanceof DataIntegrityViolationException violation) {
            LOG.warn("{} {} broke a rule of the database", request.getMethod(), Requests.shownPath(request), violation);
            return new ProblemException(
                    ProblemType.CONFLICT, "The request clashes with something stored at the same moment. Repeat it.");
        } else if (exception instanceof DataAccessResourceFailureException
                || exception instanceof TransientDataAccessException
                || exception instanceof CannotCreateTransactionException
                || isLostConnection(exception)) {
            LOG.error("{} {}: the database failed", request.getMethod(), Requests.shownPath(request), exception);
            return new ProblemException(
                    ProblemType.UNAVAILABLE,
                    "Repeat the request with the same Idempotency-Key.",
                    List.of(),
                    Map.of(HttpHeaders.RETRY_AFTER, "5"));
        } else if (exception instanceof AccessDeniedException) {
            return ProblemException.forbidden("This is not allowed to the token's person.");
        } else if (exception instanceof ErrorResponse response
                && response.getStatusCode().is4xxClientError()) {
            return ofStatus(response.getStatusCode());
        }
        LOG.error("{} {} failed", request.getMethod(), Requests.shownPath(request), exception);
        return new ProblemException(ProblemType.INTERNAL, "What happened is in the service's log.");
    }

    /**
     * Whether the database went away in the middle: what was begun cannot even be rolled back, and each layer wraps that
     * in an exception of its own. Class 08 of SQLSTATE is a connection, 57P a server that ends; without a state it was
     * not the server who spoke.
     */
    private static boolean isLostConnection(Throwable exception) {
        for (@Nullable Throwable each = exception; each != null; each = each.getCause()) {
            if (each instanceof SQLException sql) {
                String state = sql.getSQLState();
                return state == null || state.startsWith("08") || state.startsWith("57P");
            }
        }
        return false;
    }

    private static ProblemException methodNotAllowed(HttpRequestMethodNotSupportedException exception) {
        @Nullable String[] methods = exception.getSupportedMethods();
        String allowed = methods == null ? "" : String.join(", ", methods);
        return new ProblemException(
                ProblemType.METHOD_NOT_ALLOWED,
                "Possible here: " + allowed + ".",
                List.of(),
                Map.of(HttpHeaders.ALLOW, allowed));
    }

    /** The problem for a bare status, from the framework or the container. */
    static ProblemException ofStatus(HttpStatusCode status) {
        return switch (status.value()) {
            case 401 -> new ProblemException(ProblemType.UNAUTHENTICATED, "Send a token as Authorization: Bearer.");
            case 403 -> ProblemException.forbidden("This is not allowed.");
            case 404 -> new ProblemException(ProblemType.NOT_FOUND, "Nothing answers at this path.");
            case 405 -> new ProblemException(ProblemType.METHOD_NOT_ALLOWED, "The method is not possible here.");
            case 406 -> new ProblemException(ProblemType.NOT_ACCEPTABLE, "No such representation is available.");
            case 413 -> new ProblemException(ProblemType.TOO_LARGE, "The request is larger than is allowed.");
            case 415 -> new ProblemException(ProblemType.UNSUPPORTED_MEDIA_TYPE, "Send application/json in UTF-8.");
            default ->
                status.is4xxClientError()
                        ? ProblemException.malformed("The request line, a header or the path cannot be read.")
                        : new ProblemException(ProblemType.INTERNAL, "What happened is in the service's log.");
        };
    }

    /** The status as a number, where the container noted one. */
    static Optional<HttpStatusCode> statusOf(@Nullable Object attribute) {
        return attribute instanceof Integer status && status >= 400 && status < 600
                ? Optional.of(HttpStatusCode.valueOf(status))
                : Optional.empty();
    }
}
