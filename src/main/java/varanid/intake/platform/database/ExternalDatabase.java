package varanid.intake.platform.database;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.postgresql.Driver;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.env.Environment;
import org.springframework.util.StringUtils;
import varanid.intake.platform.start.CannotStart;

/**
 * The database that somebody named: {@code SPRING_DATASOURCE_URL}, {@code SPRING_DATASOURCE_USERNAME},
 * {@code SPRING_DATASOURCE_PASSWORD}; and, where another role owns the tables, {@code SPRING_FLYWAY_USER},
 * {@code SPRING_FLYWAY_PASSWORD}.
 */
final class ExternalDatabase {

    private static final Logger LOG = LoggerFactory.getLogger(ExternalDatabase.class);
    private static final int OLDEST = 14;
    private static final int NEWEST_KNOWN = 18;

    private ExternalDatabase() {}

    static DatabaseAccess named(Environment environment) {
        String url = environment.getRequiredProperty("spring.datasource.url").strip();
        @Nullable Properties inUrl = Driver.parseURL(url, new Properties());
        if (inUrl == null) {
            throw new CannotStart(
                    "SPRING_DATASOURCE_URL is \"%s\", which is no address of a PostgreSQL database."
                            .formatted(withoutPasswords(url)),
                    "It looks like this: jdbc:postgresql://host:5432/database. Leave it away to use the embedded"
                            + " database.");
        }
        Login service = login(
                environment,
                "spring.datasource.username",
                "spring.datasource.password",
                inUrl.getProperty("user", ""),
                inUrl.getProperty("password", ""));
        if (service.role().isBlank()) {
            throw new CannotStart(
                    "SPRING_DATASOURCE_URL names a database, but SPRING_DATASOURCE_USERNAME names no user for it.",
                    "Set SPRING_DATASOURCE_USERNAME and SPRING_DATASOURCE_PASSWORD.");
        }
        Login owner =
                login(environment, "spring.flyway.user", "spring.flyway.password", service.role(), service.password());
        return new DatabaseAccess(url, owner, service);
    }

    private static Login login(
            Environment environment, String role, String password, String otherwiseRole, String otherwisePassword) {
        String named = environment.getProperty(role, "");
        return StringUtils.hasText(named)
                ? new Login(named, environment.getProperty(password, ""))
                : new Login(otherwiseRole, environment.getProperty(password, otherwisePassword));
    }

    /**
     * Logs in as each role once, before the pool and Flyway would fail in their own words.
     *
     * @throws CannotStart where that fails or the server is too old
     */
    static void check(DatabaseAccess access) {
        Set<Login> logins = new LinkedHashSet<>(List.of(access.owner(), access.service()));
        for (Login login : logins) {
            try (Connection connection = DriverManager.getConnection(access.url(), login.role(), login.password())) {
                refuseUnsupported(
                        connection.getMetaData().getDatabaseMajorVersion(),
                        connection.getMetaData().getDatabaseProductVersion());
            } catch (SQLException e) {
                throw explain(e, withoutPasswords(access.url()), login);
            }
        }
    }

    static void refuseUnsupported(int majorVersion, String version) {
        if (majorVersion < OLDEST) {
            throw new CannotStart(
                    "The database server is PostgreSQL %s; Varanid Intake needs PostgreSQL %d to %d."
                            .formatted(version, OLDEST, NEWEST_KNOWN),
                    "Name a newer server with SPRING_DATASOURCE_URL, or leave it away to use the embedded database."
                            + " Nothing was changed.");
        }
        if (majorVersion > NEWEST_KNOWN) {
            LOG.warn(
                    "The database server is PostgreSQL {}, newer than any that Varanid Intake was tested with ({} to {}).",
                    version,
                    OLDEST,
                    NEWEST_KNOWN);
        }
    }

    /** Turns an SQL state into a message. The states: PostgreSQL documentation, appendix A "PostgreSQL Error Codes". */
    static CannotStart explain(SQLException failure, String url, Login login) {
        String state = Objects.requireNonNullElse(failure.getSQLState(), "");
        String said = Objects.requireNonNullElse(failure.getMessage(), state);
        return switch (state) {
            case "28P01", "28000" ->
                new CannotStart(
                        "The database %s refuses the login of %s: wrong name or password, or not allowed from here."
                                .formatted(url, login.role()),
                        "Correct SPRING_DATASOURCE_USERNAME and SPRING_DATASOURCE_PASSWORD (for the owner of the tables:"
                                + " SPRING_FLYWAY_USER and SPRING_FLYWAY_PASSWORD). It said: " + said,
                        failure);
            case "3D000" ->
                new CannotStart(
                        "The database server of %s answers, but has no such database.".formatted(url),
                        "Create the database (CREATE DATABASE ... OWNER %s), or correct SPRING_DATASOURCE_URL."
                                .formatted(login.role()),
                        failure);
            case "08001", "08004", "08006" ->
                new CannotStart(
                        "The database %s cannot be reached.".formatted(url),
                        "Start the database server, or correct SPRING_DATASOURCE_URL; leave it away to use the embedded"
                                + " database. The network said: " + said,
                        failure);
            case "53300" ->
                new CannotStart(
                        "The database server of %s has no connection left.".formatted(url),
                        "Close other programs that use it, or raise its max_connections.",
                        failure);
            case "57P03" ->
                new CannotStart(
                        "The database server of %s is just starting or stopping.".formatted(url),
                        "Try again in a minute.",
                        failure);
            default ->
                new CannotStart(
                        "The database %s does not let %s in.".formatted(url, login.role()),
                        "It said: %s (SQL state %s).".formatted(said, state),
                        failure);
        };
    }

    /** Parameters, and in other kinds of address what stands before the host, may hold a password. */
    private static String withoutPasswords(String url) {
        return url.split("\\?", 2)[0].replaceFirst("//[^/]*@", "//");
    }
}
