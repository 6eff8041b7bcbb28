package varanid.intake.platform.start;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The folder that keeps what this installation must not lose or show to others: the embedded database, its passwords,
 * the first token. The folder is made readable by its owner only; one that exists already keeps its permissions, the
 * files in it are the owner's alone either way. On Windows the permissions are those of the user's own data folder.
 */
public final class HomeFolder {

    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    private final Path path;

    private HomeFolder(Path path) {
        this.path = path;
    }

    /**
     * Opens the folder, making it where it does not exist.
     *
     * @throws CannotStart where it is no folder, cannot be made or written, or belongs to another user
     */
    public static HomeFolder open(Path folder) {
        Path absolute = folder.toAbsolutePath().normalize();
        if (Files.exists(absolute) && !Files.isDirectory(absolute)) {
            throw new CannotStart(
                    "The data folder %s is a file, not a folder.".formatted(absolute),
                    "Name a folder with VARANID_INTAKE_HOME; it is made where it does not exist.");
        }
        try {
            Files.createDirectories(absolute, ownerOnly("rwx------"));
            Path real = absolute.toRealPath();
            refuseAnotherOwner(real);
            return new HomeFolder(real);
        } catch (IOException e) {
            throw CannotStart.becauseOf(e, absolute);
        }
    }

    /**
     * Where the folder is when nobody named one: {@code varanid-intake} in the place of the operating system for the
     * data of a user.
     *
     * @param environment the environment variables
     * @param operatingSystem its name, as in the system property {@code os.name}
     * @param user the user's own folder
     */
    public static Path defaultFolder(Map<String, String> environment, String operatingSystem, Path user) {
        String system = operatingSystem.toLowerCase(Locale.ROOT);
        if (system.startsWith("windows")) {
            return folderIn(
                    environment.get("LOCALAPPDATA"), user.resolve("AppData").resolve("Local"));
        }
        if (system.startsWith("mac")) {
            return folderIn(null, user.resolve("Library").resolve("Application Support"));
        }
        return folderIn(environment.get("XDG_DATA_HOME"), user.resolve(".local").resolve("share"));
    }

    private static Path folderIn(@Nullable String named, Path otherwise) {
        // The XDG rules tell us to ignore a relative path.
        boolean usable = named != null && Path.of(named).isAbsolute();
        return (usable ? Path.of(named) : otherwise).resolve("varanid-intake");
    }

    /** The folder itself: absolute, without symbolic links. */
    public Path path() {
        return path;
    }

    /** A file or folder in it. */
    public Path resolve(String name) {
        return path.resolve(name);
    }

    /** The text of a file in it. */
    public Optional<String> find(String name) throws IOException {
        try {
            return Optional.of(Files.readString(resolve(name)));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    /**
     * Writes a file that only the owner can read. A reader sees the old text or the whole new one, and once this
     * returns the new one survives a power cut.
     */
    public void write(String name, String text) throws IOException {
        Path unfinished = Files.createTempFile(path, name + "-", ".unfinished", ownerOnly("rw-------"));
        try {
            try (FileChannel channel = FileChannel.open(unfinished, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
            rename(unfinished, resolve(name));
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }

    /**
     * Renames a file or folder inside this folder, so that it is wholly there or not at all; durable once this returns.
     * A file of the new name is replaced.
     */
    public void rename(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            throw new IOException("the file system cannot rename " + from + " at one stroke", e);
        }
        if (POSIX) {
            try (FileChannel folder = FileChannel.open(path, StandardOpenOption.READ)) {
                folder.force(true);
            }
        }
    }

    /** The attribute that makes a new file or folder the owner's alone, where the file system knows of it. */
    public static FileAttribute<?>[] ownerOnly(String permissions) {
        return POSIX
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
                }
                : new FileAttribute<?>[0];
    }

    /** PostgreSQL refuses a folder of another user, in words that are no help; and a full disk shows here too. */
    private static void refuseAnotherOwner(Path folder) throws IOException {
        Path probe = Files.createTempFile(folder, "probe-", ".unfinished", ownerOnly("rw-------"));
        try {
            UserPrincipal me = Files.getOwner(probe);
            UserPrincipal owner = Files.getOwner(folder);
            if (POSIX && !me.equals(owner)) {
                throw new CannotStart(
                        "The data folder %s belongs to the user %s, but this is the user %s."
                                .formatted(folder, owner.getName(), me.getName()),
                        "Start as %s, or choose another folder with VARANID_INTAKE_HOME.".formatted(owner.getName()));
            }
        } finally {
            Files.deleteIfExists(probe);
        }
    }

    @Override
    public String toString() {
        return path.toString();
    }
}
