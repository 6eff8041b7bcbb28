package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What the application's role may do with the tables of the real migrations. */
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT)
@OnTestDatabase
class DatabaseRightsIT {

    private static final List<String> APPEND_ONLY = List.of("INSERT", "SELECT");
    private static final List<String> EDITABLE = List.of("DELETE", "INSERT", "SELECT", "UPDATE");

    private final JdbcClient database;

    @Autowired
    DatabaseRightsIT(DataSource dataSource) {
        this.database = JdbcClient.create(dataSource);
    }

    @Test
    void theApplicationWorksInTheServiceRole() {
        assertThat(database.sql("SELECT current_user").query(String.class).single())
                .isEqualTo("varanid_service");
        assertThat(database.sql("SELECT rolsuper OR rolcreaterole OR rolcreatedb OR rolbypassrls FROM pg_roles"
                                + " WHERE rolname = current_user")
                        .query(Boolean.class)
                        .single())
                .isFalse();
    }

    @Test
    void everyTableIsInOneOfTheTwoListsOfAfterMigrate() {
        Map<String, List<String>> rights = new TreeMap<>();
        for (String table : tables()) {
            rights.put(table, rightsOn(table));
        }
        assertThat(rights)
                .allSatisfy((table, held) -> assertThat(held)
                        .as("rights on %s; is it in a list of migrations/afterMigrate.sql?", table)
                        .isIn(APPEND_ONLY, EDITABLE));
    }

    @Test
    void everyTableWithoutTheRightToUpdateHasTheTrigger() {
        for (String table : tables()) {
            boolean guarded = database.sql("SELECT EXISTS (SELECT FROM pg_trigger WHERE tgrelid = ?::regclass"
                            + " AND tgname = 'append_only' AND tgenabled = 'O')")
                    .param(table)
                    .query(Boolean.class)
                    .single();
            assertThat(guarded).as(table).isEqualTo(rightsOn(table).equals(APPEND_ONLY));
        }
    }

    @Test
    void theHistoryOfMigrationsIsClosedToTheService() {
        assertThat(rightsOn("flyway_schema_history")).isEmpty();
    }

    private List<String> tables() {
        return database.sql("SELECT relname FROM pg_class WHERE relnamespace = 'public'::regnamespace"
                        + " AND relkind IN ('r', 'p') AND relname <> 'flyway_schema_history'")
                .query(String.class)
                .list();
    }

    private List<String> rightsOn(String table) {
        return database.sql("SELECT privilege FROM unnest(ARRAY['SELECT', 'INSERT', 'UPDATE', 'DELETE', 'TRUNCATE',"
                        + " 'REFERENCES', 'TRIGGER']) AS privilege WHERE has_table_privilege(?, privilege)"
                        + " ORDER BY privilege")
                .param(table)
                .query(String.class)
                .list();
    }
}
