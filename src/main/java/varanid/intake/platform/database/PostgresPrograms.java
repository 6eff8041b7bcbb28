package varanid.intake.platform.database;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.jspecify.annotations.Nullable;
import org.springframework.util.FileSystemUtils;
import org.tukaani.xz.XZInputStream;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/**
 * The PostgreSQL programs ({@code initdb}, {@code pg_ctl}, {@code postgres}), unpacked from the class path, and how to
 * run them.
 *
 * <p>PostgreSQL refuses to run as root. On Linux root runs it through {@code unshare -U}: in a new user namespace,
 * where it has no privileges but still owns root's files.
 */
final class PostgresPrograms {

    private static final String UNFINISHED = "unpacking-";

    private final Path folder;
    private final List<String> prefix;

    private PostgresPrograms(Path folder, List<String> prefix) {
        this.folder = folder;
        this.prefix = prefix;
    }

    /** What a finished program said, both streams together, and its exit code. */
    record Outcome(int exitCode, String output) {

        boolean succeeded() {
            return exitCode == 0;
        }
    }

    /**
     * Unpacks the programs into a folder below {@code parent}, where that has not been done. Several processes may do
     * so at once; one that is killed half way leaves nothing that is taken for whole.
     *
     * @throws CannotStart where there are none for this machine, or this root user cannot run them
     */
    static PostgresPrograms in(Path parent) throws IOException {
        List<String> prefix = runsAsRoot() ? unprivileged() : List.of();
        Files.createDirectories(parent, HomeFolder.ownerOnly("rwx------"));
        byte[] archive = readArchive();
        Path folder = parent.resolve(digest(archive));
        try (FileChannel channel = FileChannel.open(
                        parent.resolve("lock"),
                        EnumSet.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE),
                        HomeFolder.ownerOnly("rw-------"));
                FileLock lock = channel.lock()) {
            assert lock.isValid();
            removeUnfinished(parent);
            if (!Files.exists(folder)) {
                Path unfinished = Files.createTempDirectory(parent, UNFINISHED, HomeFolder.ownerOnly("rwx------"));
                unpack(archive, unfinished);
                Files.move(unfinished, folder);
            }
        }
        return new PostgresPrograms(folder, prefix);
    }

    /** Runs a program to its end. */
    Outcome run(String program, List<String> arguments) throws IOException {
        List<String> command = new ArrayList<>(prefix);
        command.add(folder.resolve("bin").resolve(program).toString());
        command.addAll(arguments);
        return runToEnd(command);
    }

    /** The major version, such as 18. */
    int majorVersion() throws IOException {
        // "postgres (PostgreSQL) 18.6"
        String answer = run("postgres", List.of("--version")).output().strip();
        String version = answer.substring(answer.lastIndexOf(' ') + 1);
        return Integer.parseInt(version.split("\\D", 2)[0]);
    }

    private static Outcome runToEnd(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            return new Outcome(process.waitFor(), output);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for " + command.get(0), e);
        }
    }

    private static boolean runsAsRoot() throws IOException {
        Path self = Path.of("/proc/self");
        return Files.exists(self) && Integer.valueOf(0).equals(Files.getAttribute(self, "unix:uid"));
    }

    private static List<String> unprivileged() {
        List<String> prefix = List.of("unshare", "-U");
        @Nullable IOException cause = null;
        try {
            List<String> trial = new ArrayList<>(prefix);
            trial.add("true");
            if (runToEnd(trial).succeeded()) {
                return prefix;
            }
        } catch (IOException e) {
            cause = e;
        }
        throw new CannotStart(
                "PostgreSQL never runs as root, and this machine or container does not let root step down (it refuses"
                        + " \"unshare -U\", which makes a user namespace).",
                "Start Varanid Intake as an ordinary user, or allow user namespaces, or name a PostgreSQL of your own"
                        + " with SPRING_DATASOURCE_URL.",
                cause);
    }

    private static byte[] readArchive() throws IOException {
        for (String name : archiveNames(System.getProperty("os.name", ""), System.getProperty("os.arch", ""))) {
            try (@Nullable InputStream in = PostgresPrograms.class.getResourceAsStream("/" + name)) {
                if (in != null) {
                    return in.readAllBytes();
                }
            }
        }
        throw new CannotStart(
                "This build of Varanid Intake brings no PostgreSQL for this kind of machine (%s, %s)."
                        .formatted(System.getProperty("os.name"), System.getProperty("os.arch")),
                "Build it on this machine, or name a PostgreSQL of your own with SPRING_DATASOURCE_URL.");
    }

    /** The archive for a machine, best first: Apple's and Microsoft's ARM machines can run Intel programs too. */
    static List<String> archiveNames(String systemName, String architectureName) {
        String name = systemName.toLowerCase(Locale.ROOT);
        String system = name.startsWith("windows") ? "windows" : name.startsWith("mac") ? "darwin" : name;
        String architecture = switch (architectureName) {
            case "amd64", "x86_64" -> "x86_64";
            case "aarch64" -> "arm_64";
            default -> architectureName;
        };
        String exact = "postgres-%s-%s.txz".formatted(system, architecture);
        return system.equals("linux") ? List.of(exact) : List.of(exact, "postgres-%s-x86_64.txz".formatted(system));
    }

    private static String digest(byte[] archive) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(archive);
            return HexFormat.of().formatHex(Arrays.copyOf(digest, 8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static void removeUnfinished(Path parent) throws IOException {
        try (Stream<Path> folders = Files.list(parent)) {
            for (Path path : folders.toList()) {
                if (path.getFileName().toString().startsWith(UNFINISHED)) {
                    FileSystemUtils.deleteRecursively(path);
                }
            }
        }
    }

    private static void unpack(byte[] archive, Path folder) throws IOException {
        try (TarArchiveInputStream tar =
                new TarArchiveInputStream(new XZInputStream(new ByteArrayInputStream(archive)))) {
            for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                Path path = folder.resolve(entry.getName()).normalize();
                if (!path.startsWith(folder)) {
                    throw new IOException("unexpected path in the PostgreSQL archive: " + entry.getName());
                }
                unpack(tar, entry, path);
            }
        }
    }

    private static void unpack(TarArchiveInputStream tar, TarArchiveEntry entry, Path path) throws IOException {
        if (entry.isDirectory()) {
            Files.createDirectories(path);
            return;
        }
        Files.createDirectories(path.getParent());
        if (entry.isSymbolicLink()) {
            Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
        } else if (entry.isLink()) {
            Files.createLink(path, path.resolveSibling(entry.getLinkName()));
        } else {
            try (FileChannel channel = FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    OutputStream out = Channels.newOutputStream(channel)) {
                tar.transferTo(out);
                // The folder gets its final name once: after a power cut it must not hold empty programs.
                channel.force(false);
            }
            boolean executable =
                    (entry.getMode() & 0100) != 0 || entry.getName().matches("(\\./)?bin/[^/]+");
            if (executable && !path.toFile().setExecutable(true, true)) {
                throw new IOException("cannot make " + path + " executable");
            }
        }
    }
}
