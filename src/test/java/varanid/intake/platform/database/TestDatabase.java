package varanid.intake.platform.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import varanid.intake.platform.start.HomeFolder;

/**
 * One PostgreSQL server for all tests of this JVM, started at first use; each caller gets a new database on it. The
 * server is the one that the service brings (with the Maven profile {@code oldest-postgres} the oldest supported one),
 * but does not wait for the disk. It lies in {@code target} and is used again by the next run.
 */
public final class TestDatabase {

    /** Where the tests unpack the PostgreSQL programs, once for all of them. */
    static final Path PROGRAMS = Path.of("target", "test-postgresql").toAbsolutePath();

    private static final EmbeddedServer.Running SERVER = start();
    private static final AtomicInteger COUNT = new AtomicInteger();

    private final DatabaseAccess access;

    private TestDatabase(DatabaseAccess access) {
        this.access = access;
    }

    /** Makes an empty database, not yet migrated. */
    public static TestDatabase create() {
        String name = "test_" + COUNT.incrementAndGet();
        try (Connection connection = superuser("postgres")) {
            RolesAndDatabase.createDatabase(connection, name, SERVER.passwords());
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return new TestDatabase(new DatabaseAccess(
                RolesAndDatabase.url(SERVER.port(), name),
                SERVER.passwords().owner(),
                SERVER.passwords().service()));
    }

    /** A connection in the role that the application works with. */
    public Connection connectAsService() throws SQLException {
        return connect(access.service());
    }

    /** A connection in the role that owns the tables. */
    public Connection connectAsOwner() throws SQLException {
        return connect(access.owner());
    }

    /** The properties that put the application on this database: two roles, as {@code name=value}. */
    public List<String> properties() {
        return List.of(
                "spring.datasource.url=" + access.url(),
                "spring.datasource.username=" + access.service().role(),
                "spring.datasource.password=" + access.service().password(),
                "spring.flyway.user=" + access.owner().role(),
                "spring.flyway.password=" + access.owner().password());
    }

    DatabaseAccess access() {
        return access;
    }

    /** See {@link OnTestDatabase}. */
    public static final class Initializer implements ApplicationContextInitializer<ConfigurableApplicationContext> {

        @Override
        public void initialize(ConfigurableApplicationContext context) {
            try {
                Path home =
                        Files.createTempDirectory(Files.createDirectories(Path.of("target", "test-homes")), "home-");
                TestPropertyValues.of(TestDatabase.create().properties())
                        .and("varanid.intake.home=" + home)
                        .applyTo(context);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private Connection connect(Login login) throws SQLException {
        return DriverManager.getConnection(access.url(), login.role(), login.password());
    }

    static Connection superuser(String database) throws SQLException {
        return RolesAndDatabase.connect(
                SERVER.port(), database, SERVER.passwords().superuser());
    }

    private static EmbeddedServer.Running start() {
        try {
            int version = PostgresPrograms.in(PROGRAMS).majorVersion();
            HomeFolder home = HomeFolder.open(Path.of("target", "test-database-" + version));
            EmbeddedServer.Running server = EmbeddedServer.start(home, new ServerSettings(PROGRAMS, 0, false));
            Runtime.getRuntime().addShutdownHook(new Thread(server::close, "test-database-stop"));
            dropLeftOver(server);
            return server;
        } catch (IOException | SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void dropLeftOver(EmbeddedServer.Running server) throws SQLException {
        try (Connection connection = RolesAndDatabase.connect(
                        server.port(), "postgres", server.passwords().superuser());
                Statement statement = connection.createStatement()) {
            List<String> names = new ArrayList<>();
            try (ResultSet result =
                    statement.executeQuery("SELECT datname FROM pg_database WHERE datname LIKE 'test\\_%'")) {
                while (result.next()) {
                    names.add(result.getString(1));
                }
            }
            for (String name : names) {
                statement.execute("DROP DATABASE %s WITH (FORCE)".formatted(name));
            }
        }
    }
}
