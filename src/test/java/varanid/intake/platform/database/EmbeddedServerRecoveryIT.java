package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.util.FileSystemUtils;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/** Starts of the embedded server that something stood in the way of: a kill, a full disk, a foreign file. */
class EmbeddedServerRecoveryIT {

    @TempDir
    static Path preparedParent;

    @TempDir
    Path parent;

    @BeforeAll
    static void prepare() {
        start(HomeFolder.open(preparedParent)).close();
    }

    @Test
    void keepsItsDataAndPasswordsFromOneRunToTheNext() throws Exception {
        HomeFolder home = home();
        Passwords passwords;
        try (EmbeddedServer.Running server = start(home);
                Connection connection = connect(server, server.passwords().owner())) {
            passwords = server.passwords();
            execute(connection, "CREATE TABLE kept AS SELECT 'it was here' AS text");
        }
        assertThat(home.resolve("database").resolve("postmaster.pid")).doesNotExist();
        showsItsFilesToTheirOwnerOnly(home.path());
        try (EmbeddedServer.Running server = start(home);
                Connection connection = connect(server, passwords.owner())) {
            assertThat(ask(connection, "SELECT text FROM kept")).isEqualTo("it was here");
        }
    }

    private static void showsItsFilesToTheirOwnerOnly(Path folder) throws IOException {
        if (System.getProperty("os.name").startsWith("Windows")) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            assertThat(files)
                    .allSatisfy(file -> assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                            .as(file.toString())
                            .endsWith("------"));
        }
    }

    @Test
    void losesNothingAcknowledgedWhenTheProcessIsKilledAndStopsTheServerThatWasLeftBehind() throws Exception {
        surviveKill(ChildJvm.As.me(), parent.resolve("home"), TestDatabase.PROGRAMS);
    }

    @Test
    void doesSoAsAnOrdinaryUserToo() throws Exception {
        assumeThat(OrdinaryUser.isAvailable())
                .as("the tests run as root and may run Java as nobody")
                .isTrue();
        // Not below JUnit's folder, which is closed to others.
        Path open = Files.createTempDirectory("varanid-intake-as-nobody-");
        try {
            ChildJvm.As nobody = OrdinaryUser.in(open);
            surviveKill(
                    nobody, OrdinaryUser.folder(open.resolve("home")), OrdinaryUser.folder(open.resolve("programs")));
        } finally {
            FileSystemUtils.deleteRecursively(open);
        }
    }

    private static void surviveKill(ChildJvm.As as, Path home, Path programs) throws Exception {
        long acknowledged;
        try (ChildJvm writer =
                ChildJvm.start(as, Map.of(), ServerChild.class, "write", home.toString(), programs.toString())) {
            writer.awaitLine("acknowledged 200");
            try (ChildJvm second =
                    ChildJvm.start(as, Map.of(), ServerChild.class, "count", home.toString(), programs.toString())) {
                assertThat(second.awaitEnd()).contains("is already running on the folder");
            }
            writer.kill();
            acknowledged = lastNumber(writer.awaitEnd());
        }
        long orphan = PidFile.parse(Files.readString(home.resolve("database").resolve("postmaster.pid")))
                .orElseThrow()
                .processId();
        assertThat(runs(orphan)).as("the server outlives the killed process").isTrue();
        try (ChildJvm reader =
                ChildJvm.start(as, Map.of(), ServerChild.class, "count", home.toString(), programs.toString())) {
            String[] found = reader.awaitLine("found ").split(" ");
            // One more may have been committed without the word having got out.
            assertThat(Long.parseLong(found[1])).isBetween(acknowledged, acknowledged + 1);
            assertThat(found[2]).as("each row once").isEqualTo(found[1]);
            reader.awaitEnd();
        }
        assertThat(runs(orphan)).as("the orphan is stopped").isFalse();
        assertThat(home.resolve("database").resolve("postmaster.pid")).doesNotExist();
    }

    @Test
    void recoversWhereTheFirstStartWasKilledWhileItMadeTheDatabase() throws Exception {
        HomeFolder home = home();
        try (WatchService changes = FileSystems.getDefault().newWatchService()) {
            home.path().register(changes, StandardWatchEventKinds.ENTRY_CREATE);
            try (ChildJvm child = ChildJvm.start(
                    ChildJvm.As.me(),
                    Map.of(),
                    ServerChild.class,
                    "write",
                    home.toString(),
                    TestDatabase.PROGRAMS.toString())) {
                awaitUnfinished(changes);
                child.kill();
            }
        }
        assertThat(home.resolve("database")).doesNotExist();
        Path token = Files.createFile(home.resolve("token-1.unfinished"));
        try (EmbeddedServer.Running server = start(home)) {
            assertThat(server.port()).isPositive();
        }
        assertThat(token).as("a file half written is removed").doesNotExist();
    }

    private static void awaitUnfinished(WatchService changes) throws InterruptedException {
        while (true) {
            WatchKey key = changes.poll(2, TimeUnit.MINUTES);
            assertThat(key).as("the child makes a database").isNotNull();
            if (key.pollEvents().stream()
                    .anyMatch(event -> event.context().toString().startsWith("database-unf"))) {
                return;
            }
            key.reset();
        }
    }

    @Test
    void recoversWhereTheServerItselfWasKilledAndItsNumberWasGivenToAnother() throws Exception {
        HomeFolder home = homeWithDatabase();
        long me = ProcessHandle.current().pid();
        leavePidFile(home, me);
        try (EmbeddedServer.Running server = start(home)) {
            assertThat(server.port()).isPositive();
        }
        // This process lives on, or we would not be here.
    }

    @Test
    void doesNotStopTheServerOfAnotherFolder() throws Exception {
        HomeFolder home = homeWithDatabase();
        try (EmbeddedServer.Running other = start(copyOfPrepared("other"))) {
            long otherProcess = PidFile.parse(
                            Files.readString(parent.resolve("other").resolve("database/postmaster.pid")))
                    .orElseThrow()
                    .processId();
            leavePidFile(home, otherProcess);
            try (EmbeddedServer.Running server = start(home);
                    Connection connection = connect(other, other.passwords().owner())) {
                assertThat(server.port()).isNotEqualTo(other.port());
                assertThat(ask(connection, "SELECT 1")).isEqualTo("1");
            }
        }
    }

    @Test
    void neverRemovesAFolderThatIsInTheWay() throws IOException {
        HomeFolder home = home();
        Path precious = Files.createDirectory(home.resolve("database")).resolve("precious");
        Files.writeString(precious, "mine");
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> start(home))
                .withMessageContaining("holds no PostgreSQL database");
        assertThat(precious).hasContent("mine");
    }

    @Test
    void refusesADatabaseOfAnotherMajorVersion() throws IOException {
        HomeFolder home = homeWithDatabase();
        Files.writeString(home.resolve("database").resolve("PG_VERSION"), "9\n");
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> start(home))
                .withMessageContaining("was made by PostgreSQL 9; this version of Varanid Intake brings PostgreSQL ");
    }

    @Test
    void refusesADatabaseWhosePasswordsAreLost() throws IOException {
        HomeFolder home = homeWithDatabase();
        String passwords = home.find(Passwords.FILE).orElseThrow();
        Files.delete(home.resolve(Passwords.FILE));
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> start(home))
                .withMessageContaining("database-passwords is missing");
        home.write(Passwords.FILE, passwords.replaceAll("=.", "=_"));
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> start(home))
                .withMessageContaining("does not fit the database");
        assertThat(home.resolve("database").resolve("postmaster.pid"))
                .as("nothing keeps running")
                .doesNotExist();
        home.write(Passwords.FILE, passwords);
        start(home).close();
    }

    @Test
    void tellsWhenItsPortIsTaken() throws IOException {
        try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            ServerSettings settings = new ServerSettings(TestDatabase.PROGRAMS, other.getLocalPort(), true);
            assertThatExceptionOfType(CannotStart.class)
                    .isThrownBy(() -> EmbeddedServer.start(home(), settings))
                    .withMessageContaining("Port %d, on which the embedded database", other.getLocalPort());
        }
    }

    @Test
    void tellsWhenTheDiskIsFull() throws Exception {
        Path small = Files.createDirectory(parent.resolve("small"));
        assumeThat(mount(small)).as("this user may mount a small disk").isTrue();
        try {
            HomeFolder home = HomeFolder.open(small);
            assertThatExceptionOfType(CannotStart.class)
                    .isThrownBy(() -> start(home))
                    .withMessage("There is no space left on the disk that holds the data folder %s.", home);
        } finally {
            run("umount", small.toString());
        }
    }

    @Test
    void tellsWhenRootCannotStepDown() throws Exception {
        assumeThat(Files.getAttribute(parent, "unix:uid"))
                .as("the tests run as root")
                .isEqualTo(0);
        Path programs = Files.createDirectory(parent.resolve("bin"));
        Path refusing = Files.writeString(programs.resolve("unshare"), "#!/bin/sh\nexit 1\n");
        assertThat(refusing.toFile().setExecutable(true)).isTrue();
        try (ChildJvm child = ChildJvm.start(
                ChildJvm.As.me(),
                Map.of("PATH", programs.toString()),
                ServerChild.class,
                "write",
                home().toString(),
                TestDatabase.PROGRAMS.toString())) {
            assertThat(child.awaitEnd())
                    .contains("cannot start: PostgreSQL never runs as root")
                    .contains("user namespace");
        }
    }

    private HomeFolder home() {
        return HomeFolder.open(parent.resolve("home"));
    }

    /** A folder as the service leaves it after its first run. */
    private HomeFolder homeWithDatabase() throws IOException {
        return copyOfPrepared("home");
    }

    private HomeFolder copyOfPrepared(String name) throws IOException {
        Path copy = parent.resolve(name);
        try (Stream<Path> files = Files.walk(preparedParent)) {
            for (Path file : (Iterable<Path>) files::iterator) {
                Path target = copy.resolve(preparedParent.relativize(file).toString());
                Files.copy(file, target, StandardCopyOption.COPY_ATTRIBUTES);
            }
        }
        return HomeFolder.open(copy);
    }

    private static EmbeddedServer.Running start(HomeFolder home) {
        return EmbeddedServer.start(home, new ServerSettings(TestDatabase.PROGRAMS, 0, true));
    }

    private static void leavePidFile(HomeFolder home, long process) throws IOException {
        Path data = home.resolve("database");
        Files.writeString(
                data.resolve("postmaster.pid"), "%d\n%s\n1795617816\n39133\n\n127.0.0.1\n".formatted(process, data));
    }

    private static Connection connect(EmbeddedServer.Running server, Login login) throws SQLException {
        return RolesAndDatabase.connect(server.port(), RolesAndDatabase.DATABASE, login);
    }

    private static String ask(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            assertThat(result.next()).isTrue();
            return result.getString(1);
        }
    }

    private static void execute(Connection connection, String command) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
    }

    private static long lastNumber(String output) {
        return output.lines()
                .filter(line -> line.matches("acknowledged \\d+"))
                .mapToLong(line -> Long.parseLong(line.substring("acknowledged ".length())))
                .max()
                .orElseThrow();
    }

    /** A dead process that nobody collected does not run. */
    private static boolean runs(long process) {
        return ProcessHandle.of(process)
                .filter(ProcessHandle::isAlive)
                .flatMap(handle -> handle.info().command())
                .isPresent();
    }

    private static boolean mount(Path folder) throws Exception {
        return run("mount", "-t", "tmpfs", "-o", "size=20m,mode=0700", "none", folder.toString());
    }

    private static boolean run(String... command) throws Exception {
        try {
            return new ProcessBuilder(command)
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }
}
