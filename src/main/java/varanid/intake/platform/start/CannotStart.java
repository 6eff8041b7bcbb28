package varanid.intake.platform.start;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The service cannot start, for a reason that a person can remove. Told by {@link StartFailureReporter} as two
 * paragraphs, what is wrong and what to do, and ends the process with exit code 1.
 */
public final class CannotStart extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String whatToDo;

    /**
     * @param whatIsWrong whole sentences that name the thing at fault: the folder, the port, the address
     * @param whatToDo whole sentences
     */
    public CannotStart(String whatIsWrong, String whatToDo) {
        this(whatIsWrong, whatToDo, null);
    }

    /** As the other constructor, and keeps the cause for a debugger. */
    public CannotStart(String whatIsWrong, String whatToDo, @Nullable Throwable cause) {
        super(Objects.requireNonNull(whatIsWrong), cause);
        this.whatToDo = Objects.requireNonNull(whatToDo);
    }

    /** The message for a file or folder below the home folder that could not be read or written. */
    public static CannotStart becauseOf(IOException cause, Path home) {
        String reason = reason(cause);
        if (isDiskFull(reason)) {
            return diskFull(home);
        }
        if (cause instanceof AccessDeniedException
                || reason.toLowerCase(Locale.ROOT).contains("permission denied")) {
            return new CannotStart(
                    "The data folder %s cannot be used: no permission for %s.".formatted(home, fileOf(cause, home)),
                    "Start as the user who owns the folder, or choose another folder with VARANID_INTAKE_HOME.",
                    cause);
        }
        return new CannotStart(
                "The data folder %s cannot be used: %s.".formatted(home, reason),
                "Remove the cause, or choose another folder with VARANID_INTAKE_HOME.",
                cause);
    }

    /** The message for a full disk. */
    public static CannotStart diskFull(Path home) {
        return new CannotStart(
                "There is no space left on the disk that holds the data folder %s.".formatted(home),
                "Make room (a first start takes about 300 MB), or choose a folder on another disk with"
                        + " VARANID_INTAKE_HOME. Nothing that was stored is lost.");
    }

    /** Whether a message of the operating system or of PostgreSQL says that the disk is full. */
    public static boolean isDiskFull(String message) {
        String text = message.toLowerCase(Locale.ROOT);
        return text.contains("no space left on device")
                || text.contains("check free disk space")
                || text.contains("not enough space on the disk")
                || text.contains("disk quota exceeded");
    }

    /** What a person can do about it. */
    public String whatToDo() {
        return whatToDo;
    }

    private static String reason(IOException cause) {
        if (cause instanceof FileSystemException file && file.getReason() != null) {
            return file.getFile() + ": " + file.getReason();
        }
        return Objects.requireNonNullElse(cause.getMessage(), cause.getClass().getSimpleName());
    }

    private static String fileOf(IOException cause, Path home) {
        return cause instanceof FileSystemException file && file.getFile() != null ? file.getFile() : home.toString();
    }
}
