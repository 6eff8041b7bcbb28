package varanid.intake.platform.database;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Root's way to run a Java process as the user {@code nobody}: with a copy of the class path that this user may read,
 * and a folder that is theirs.
 */
final class OrdinaryUser {

    private static final int NOBODY = 65534;
    /** Becomes the program instead of starting it, so that a kill hits the program. */
    private static final List<String> AS_NOBODY =
            List.of("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups", "--");

    private OrdinaryUser() {}

    /** Whether the tests run as root, and the machine lets root run Java as {@code nobody}. */
    static boolean isAvailable() {
        Path self = Path.of("/proc/self");
        try {
            if (!Files.exists(self) || !Integer.valueOf(0).equals(Files.getAttribute(self, "unix:uid"))) {
                return false;
            }
            List<String> command = new ArrayList<>(AS_NOBODY);
            command.addAll(List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-version"));
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Copies the class path below a folder of everybody. */
    static ChildJvm.As in(Path folder) throws IOException {
        makeReadable(folder);
        List<String> copies = new ArrayList<>();
        for (String entry : ChildJvm.As.classPathOfTests()) {
            Path source = Path.of(entry);
            if (Files.exists(source)) {
                Path copy = folder.resolve(copies.size() + "-" + source.getFileName());
                copy(source, copy);
                copies.add(copy.toString());
            }
        }
        return new ChildJvm.As(AS_NOBODY, String.join(File.pathSeparator, copies));
    }

    /** Makes a folder that belongs to {@code nobody}. */
    static Path folder(Path path) throws IOException {
        Files.createDirectory(path);
        Files.setAttribute(path, "unix:uid", NOBODY);
        return path;
    }

    private static void copy(Path source, Path target) throws IOException {
        try (Stream<Path> files = Files.walk(source)) {
            for (Path file : (Iterable<Path>) files::iterator) {
                Path copy = target.resolve(source.relativize(file).toString());
                Files.copy(file, copy);
                makeReadable(copy);
            }
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static void makeReadable(Path path) {
        boolean done = path.toFile().setReadable(true, false)
                && (!Files.isDirectory(path) || path.toFile().setExecutable(true, false));
        if (!done) {
            throw new IllegalStateException("cannot open " + path);
        }
    }
}
