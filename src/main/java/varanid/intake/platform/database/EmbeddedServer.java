package varanid.intake.platform.database;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.util.FileSystemUtils;
import varanid.intake.platform.database.PostgresPrograms.Outcome;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/**
 * A PostgreSQL server on the home folder, for this process alone. Files in the folder:
 *
 * <table>
 * <caption>Files</caption>
 * <tr><td>{@code lock}</td><td>see {@link HomeLock}</td></tr>
 * <tr><td>{@code database}</td><td>PostgreSQL's data; there whole or not at all</td></tr>
 * <tr><td>{@code database-passwords}</td><td>see {@link Passwords}</td></tr>
 * <tr><td>{@code database.log}, {@code database.log.1}</td><td>what the server said since this start and before</td></tr>
 * <tr><td>{@code database-unfinished-*}, {@code *.unfinished}</td><td>left by a start that was killed; removed</td></tr>
 * </table>
 */
final class EmbeddedServer implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(EmbeddedServer.class);
    private static final String UNFINISHED = "database-unfinished-";
    private static final int ATTEMPTS = 5;
    /** Recovery after a crash may take long, and must not be cut off. */
    private static final String START_SECONDS = "600";

    private static final String STOP_SECONDS = "60";

    private final HomeFolder home;
    private final ServerSettings settings;
    private final HomeLock lock;
    private final PostgresPrograms programs;
    private final Path data;
    private final Path log;

    private EmbeddedServer(HomeFolder home, ServerSettings settings, HomeLock lock, PostgresPrograms programs) {
        this.home = home;
        this.settings = settings;
        this.lock = lock;
        this.programs = programs;
        this.data = home.resolve("database");
        this.log = home.resolve("database.log");
    }

    /** A server that is up, with its roles and its database. */
    record Running(EmbeddedServer server, int port, Passwords passwords) implements AutoCloseable {

        DatabaseAccess access() {
            return new DatabaseAccess(
                    RolesAndDatabase.url(port, RolesAndDatabase.DATABASE), passwords.owner(), passwords.service());
        }

        @Override
        public void close() {
            server.close();
        }
    }

    /**
     * Starts the server; makes the database where there is none; first stops the server of a process that was killed.
     *
     * @throws CannotStart for every cause that a person can remove; then no server runs
     */
    static Running start(HomeFolder home, ServerSettings settings) {
        try {
            HomeLock lock = HomeLock.take(home);
            boolean started = false;
            try {
                EmbeddedServer server =
                        new EmbeddedServer(home, settings, lock, PostgresPrograms.in(settings.programs()));
                Running running = server.start();
                started = true;
                return running;
            } finally {
                if (!started) {
                    lock.close();
                }
            }
        } catch (IOException e) {
            throw CannotStart.becauseOf(e, home.path());
        }
    }

    private Running start() throws IOException {
        removeUnfinished();
        boolean exists = exists();
        Passwords passwords = Passwords.of(home, exists);
        if (exists) {
            refuseAnotherMajorVersion();
        } else {
            initialise(passwords.superuser());
        }
        int port = startServer();
        boolean ready = false;
        try {
            RolesAndDatabase.ensure(port, passwords);
            ready = true;
            return new Running(this, port, passwords);
        } finally {
            if (!ready) {
                stop("fast");
            }
        }
    }

    /** Stops the server, in the "fast" way: what is committed is kept, what is open is rolled back. */
    @Override
    public void close() {
        try (lock) {
            if (Files.exists(data.resolve("postmaster.pid")) && !stop("fast").succeeded()) {
                LOG.warn("The database server could not be stopped; the next start will. See {}", log);
            }
        } catch (IOException e) {
            LOG.warn("The database server could not be stopped; the next start will. See {}", log, e);
        }
    }

    private boolean exists() throws IOException {
        if (Files.exists(data.resolve("PG_VERSION"))) {
            return true;
        }
        if (Files.exists(data)) {
            // Not made by us, since we give the name to a finished database only. An empty folder is harmless; a full
            // one is not ours to remove.
            try (Stream<Path> content = Files.list(data)) {
                if (content.findAny().isPresent()) {
                    throw new CannotStart(
                            "The folder %s is in the place of the database but holds no PostgreSQL database."
                                    .formatted(data),
                            "Move it away, or put the database back from a backup. Nothing was changed.");
                }
            }
            Files.delete(data);
        }
        return false;
    }

    private void refuseAnotherMajorVersion() throws IOException {
        String stored = Files.readString(data.resolve("PG_VERSION")).strip();
        String ours = String.valueOf(programs.majorVersion());
        if (!stored.equals(ours)) {
            throw new CannotStart(
                    "The database in %s was made by PostgreSQL %s; this version of Varanid Intake brings PostgreSQL %s."
                            .formatted(data, stored, ours),
                    "Start the version that made it, dump the database there, and load the dump into a new folder"
                            + " (VARANID_INTAKE_HOME). Nothing was changed.");
        }
    }

    /** Makes the database under another name, so that it is there whole or not at all. */
    private void initialise(Login superuser) throws IOException {
        Path unfinished = Files.createTempDirectory(home.path(), UNFINISHED, HomeFolder.ownerOnly("rwx------"));
        Path passwordFile = Files.createTempFile(home.path(), UNFINISHED, "", HomeFolder.ownerOnly("rw-------"));
        try {
            Files.writeString(passwordFile, superuser.password());
            Outcome outcome = programs.run(
                    "initdb",
                    List.of(
                            "--pgdata=" + unfinished,
                            "--username=" + superuser.role(),
                            "--pwfile=" + passwordFile,
                            "--auth=scram-sha-256",
                            "--encoding=UTF8",
                            // The same order of text on every machine.
                            "--no-locale",
                            "--data-checksums"));
            if (!outcome.succeeded()) {
                throw failure("The database could not be made in " + home + ".", outcome.output());
            }
        } finally {
            Files.deleteIfExists(passwordFile);
        }
        home.rename(unfinished, data);
    }

    private void removeUnfinished() throws IOException {
        try (Stream<Path> files = Files.list(home.path())) {
            for (Path path : files.toList()) {
                String name = path.getFileName().toString();
                // The second kind is of HomeFolder.write; we hold the lock, so nobody is writing now.
                if (name.startsWith(UNFINISHED) || name.endsWith(".unfinished")) {
                    removeUnfinished(path);
                }
            }
        }
    }

    private static void removeUnfinished(Path path) {
        try {
            FileSystemUtils.deleteRecursively(path);
        } catch (IOException e) {
            // The initdb of a killed start may still be writing there; it is in nobody's way.
            LOG.debug("{} is left to the next start", path, e);
        }
    }

    private int startServer() throws IOException {
        for (int attempt = 1; ; attempt++) {
            stopOrphan();
            if (Files.exists(log)) {
                Files.move(log, log.resolveSibling("database.log.1"), StandardCopyOption.REPLACE_EXISTING);
            }
            int port = settings.port() == 0 ? freePort() : settings.port();
            Outcome outcome = programs.run(
                    "pg_ctl",
                    List.of(
                            "--pgdata=" + data,
                            "--log=" + log,
                            "--wait",
                            "--timeout=" + START_SECONDS,
                            "--options=" + options(port),
                            "start"));
            if (outcome.succeeded()) {
                return port;
            }
            String said = Files.exists(log) ? read(log) : outcome.output();
            if (attempt == ATTEMPTS || !mayPass(said)) {
                throw startFailure(said, port);
            }
            pause();
        }
    }

    private String options(int port) {
        return Stream.concat(Stream.of("port=" + port), settings.options().stream())
                .map(option -> "-c " + option)
                .collect(Collectors.joining(" "));
    }

    /**
     * Stops the server that a killed process left on this folder. We hold the folder's lock, so no living process of
     * ours uses it.
     */
    private void stopOrphan() throws IOException {
        Path file = data.resolve("postmaster.pid");
        if (!Files.exists(file)) {
            return;
        }
        Optional<PidFile> written = PidFile.parse(Files.readString(file));
        Optional<ProcessHandle> process =
                written.flatMap(pid -> ProcessHandle.of(pid.processId())).filter(ProcessHandle::isAlive);
        if (process.isEmpty()) {
            return; // PostgreSQL itself removes the file of a dead server, and recovers.
        }
        if (!written.get().isWrittenBy(process.get().info(), data.toRealPath())) {
            // The number was given to another process, which is none of our business; but PostgreSQL would take it for
            // a living server.
            Files.delete(file);
            return;
        }
        if (!stop("fast").succeeded() && !stop("immediate").succeeded()) {
            throw new CannotStart(
                    "A database server that an earlier run left behind (process %d) does not stop."
                            .formatted(process.get().pid()),
                    "End that process, then start again. What was committed is safe. Its messages are in " + log + ".");
        }
        LOG.info("Stopped the database server that an earlier run had left behind.");
    }

    private Outcome stop(String mode) throws IOException {
        return programs.run(
                "pg_ctl", List.of("--pgdata=" + data, "--mode=" + mode, "--wait", "--timeout=" + STOP_SECONDS, "stop"));
    }

    /** Whether the cause may be gone in a second: the free port was taken, or an older server is just ending. */
    private boolean mayPass(String said) {
        return said.contains("pre-existing shared memory block")
                || said.contains("lock file")
                || (settings.port() == 0 && said.contains("could not bind"));
    }

    private CannotStart startFailure(String said, int port) {
        if (said.contains("could not bind")) {
            return new CannotStart(
                    "Port %d, on which the embedded database was to listen, is already used by another program."
                            .formatted(port),
                    "Stop the other program, or choose another port with VARANID_INTAKE_DATABASE_PORT"
                            + " (0 for any free one).");
        }
        return failure("The embedded database did not start.", said);
    }

    private CannotStart failure(String whatIsWrong, String said) {
        if (CannotStart.isDiskFull(said)) {
            return CannotStart.diskFull(home.path());
        }
        return new CannotStart(
                whatIsWrong + " PostgreSQL said:\n\n"
                        + lastLines(said.strip()).indent(2).stripTrailing(),
                "Remove the cause, or name a PostgreSQL of your own with SPRING_DATASOURCE_URL.");
    }

    /** Not as strict as {@code Files.readString}: the operating system's part of a message may be in any encoding. */
    private static String read(Path file) throws IOException {
        return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    }

    private static String lastLines(String text) {
        List<String> lines = text.lines().toList();
        return String.join("\n", lines.subList(Math.max(0, lines.size() - 8), lines.size()));
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private static void pause() throws IOException {
        try {
            Thread.sleep(1000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while starting the database", e);
        }
    }
}
