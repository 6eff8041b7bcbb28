package varanid.intake.platform.web;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;

/**
 * A file that is on its way, as {@code multipart/form-data}. A controller takes it as a parameter, asks first whether the
 * caller may, and then {@linkplain #receive receives} it: nothing of the body is read before.
 *
 * <p>While it comes it is a temporary file. It is read into memory when its turn comes: of all files that have come one
 * at a time is worked on, so that memory is bounded by the largest and not by how many people send.
 */
public final class FileUpload {

    /** The largest file that any feature takes. */
    public static final int LARGEST_FILE = 20 * 1024 * 1024;

    /** The fields beside it, and what is between the parts. */
    static final int LARGEST_REST = 64 * 1024;

    private static final int SECONDS_TO_WAIT = 30;
    private static final Semaphore TURN = new Semaphore(1, true);

    private final HttpServletRequest request;
    private final @Nullable String key;

    FileUpload(HttpServletRequest request, @Nullable String key) {
        this.request = request;
        this.key = key;
    }

    /**
     * Receives the file and does something with it; afterwards nothing of it is left.
     *
     * @throws ProblemException 400 where the body cannot be read, 413 where it is too large, 415 where it is of another
     *     type, 503 where too many are waiting, and whatever is thrown by what is done with it
     */
    public <R> R receive(Function<FileRequest, R> use) {
        requireMultipart();
        if (request.getContentLengthLong() > LARGEST_FILE + LARGEST_REST) {
            throw tooLarge();
        }
        Collection<Part> parts = parts();
        try {
            return whenItsTurnComes(() -> use.apply(read(parts)));
        } finally {
            parts.forEach(FileUpload::delete);
        }
    }

    private static <R> R whenItsTurnComes(Supplier<R> work) {
        try {
            if (!TURN.tryAcquire(SECONDS_TO_WAIT, TimeUnit.SECONDS)) {
                throw busy();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw busy();
        }
        try {
            return work.get();
        } finally {
            TURN.release();
        }
    }

    private Collection<Part> parts() {
        try {
            return request.getParts();
        } catch (InvalidParameterException e) {
            throw e.getErrorCode() == ProblemType.TOO_LARGE.status() ? tooLarge() : unreadable();
        } catch (IllegalStateException e) {
            // The fields together are larger than the container takes.
            throw tooLarge();
        } catch (IOException | ServletException e) {
            throw unreadable();
        }
    }

    private FileRequest read(Collection<Part> parts) {
        Map<String, String> fields = new HashMap<>();
        byte @Nullable [] file = null;
        for (Part part : parts) {
            boolean isFile = part.getName().equals(FileRequest.FILE);
            byte[] content = bytes(part);
            if (isFile ? file != null : fields.put(part.getName(), text(part, content)) != null) {
                throw ProblemException.malformed("The part " + Texts.quote(part.getName()) + " is there twice.");
            }
            if (isFile) {
                file = content;
            }
        }
        return new FileRequest(request.getMethod() + " " + Requests.target(request), fields, file, key);
    }

    private static byte[] bytes(Part part) {
        try (InputStream content = part.getInputStream()) {
            return content.readAllBytes();
        } catch (IOException e) {
            throw new IllegalStateException("a received part cannot be read", e);
        }
    }

    private static String text(Part part, byte[] content) {
        if (content.length > LARGEST_REST) {
            throw tooLarge();
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(content))
                    .toString();
        } catch (CharacterCodingException e) {
            throw ProblemException.malformed("The part " + Texts.quote(part.getName()) + " is not UTF-8.");
        }
    }

    private static void delete(Part part) {
        try {
            part.delete();
        } catch (IOException e) {
            // The container tries again when the request has ended.
        }
    }

    private void requireMultipart() {
        @Nullable String type = request.getContentType();
        if (type == null || !type.toLowerCase(Locale.ROOT).startsWith("multipart/form-data")) {
            throw new ProblemException(
                    ProblemType.UNSUPPORTED_MEDIA_TYPE,
                    "The body is "
                            + (type == null ? "without a Content-Type" : "sent as " + Texts.quote(type))
                            + "; send multipart/form-data with a part named " + FileRequest.FILE + ".",
                    List.of(),
                    Map.of("Accept", "multipart/form-data"));
        }
    }

    private static ProblemException tooLarge() {
        return new ProblemException(
                ProblemType.TOO_LARGE,
                "The file is larger than " + LARGEST_FILE + " bytes, or the fields beside it than " + LARGEST_REST
                        + ".");
    }

    private static ProblemException unreadable() {
        return ProblemException.malformed(
                "The body cannot be read as multipart/form-data: is there a boundary, and are all parts complete?");
    }

    private static ProblemException busy() {
        return new ProblemException(
                ProblemType.UNAVAILABLE,
                "Too many files are being sent. Repeat the request with the same Idempotency-Key.",
                List.of(),
                Map.of("Retry-After", "30"));
    }
}
