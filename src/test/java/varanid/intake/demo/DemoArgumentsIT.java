package varanid.intake.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.builder.SpringApplicationBuilder;
import varanid.intake.VaranidIntake;
import varanid.intake.platform.database.TestDatabase;

/** The start with its arguments, on a database with one role, which both serves and owns the tables. */
class DemoArgumentsIT {

    @TempDir
    Path home;

    @Test
    void loadsAndRemovesTheDemoAtTheStart() throws SQLException {
        Map<String, String> database = new HashMap<>();
        TestDatabase.create().properties().forEach(property -> {
            int equals = property.indexOf('=');
            database.put(property.substring(0, equals), property.substring(equals + 1));
        });
        start(database, "--load-demo");
        assertThat(home.resolve("demo-token")).exists();
        assertThat(counts(database)).isEqualTo("2 organisations, 16 animals");
        start(database, "--remove-demo");
        assertThat(home.resolve("demo-token")).doesNotExist();
        assertThat(counts(database)).isEqualTo("1 organisations, 0 animals");
    }

    private void start(Map<String, String> database, String argument) {
        new SpringApplicationBuilder(VaranidIntake.class)
                .run(
                        argument,
                        "--server.port=0",
                        "--varanid.intake.home=" + home,
                        "--spring.datasource.url=" + database.get("spring.datasource.url"),
                        "--spring.datasource.username=" + database.get("spring.flyway.user"),
                        "--spring.datasource.password=" + database.get("spring.flyway.password"))
                .close();
    }

    private static String counts(Map<String, String> database) throws SQLException {
        try (Connection connection = DriverManager.getConnection(
                        Objects.requireNonNull(database.get("spring.datasource.url")),
                        database.get("spring.flyway.user"),
                        database.get("spring.flyway.password"));
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT (SELECT count(*) FROM organisation) ||"
                        + " ' organisations, ' || (SELECT count(*) FROM animal) || ' animals'")) {
            row.next();
            return row.getString(1);
        }
    }
}
