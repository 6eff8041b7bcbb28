package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The database itself refuses to change what was kept, whoever asks. */
@ServiceTest
class AppendOnlyAssessmentsIT {

    // 42501 insufficient_privilege: PostgreSQL 18 documentation, appendix A.
    private static final String REFUSED = "42501";

    @Autowired
    Organisations organisations;

    @Autowired
    Environment environment;

    private Client keeper;
    private String path = "";
    private String kept = "";

    @BeforeEach
    void keepOne() {
        keeper = organisations.create().keeper();
        String animal = keeper.post("/api/v1/animals", "{}").header("Location").orElseThrow();
        Answer answer = keeper.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\"}");
        path = answer.header("Location").orElseThrow();
        kept = answer.body();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE assessment SET urgency = 'routine'",
                "UPDATE assessment SET urgency = 'routine' WHERE false",
                "DELETE FROM assessment",
                "TRUNCATE assessment CASCADE",
                "UPDATE checklist_in_use SET checklist_version = 2",
                "DELETE FROM checklist_in_use",
                "TRUNCATE checklist_in_use",
                "ALTER TABLE assessment DISABLE TRIGGER append_only",
                "DROP TABLE assessment",
            })
    void theServicesRoleHasNoRightTo(String change) throws SQLException {
        refuses("spring.datasource.username", "spring.datasource.password", change);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE assessment SET urgency = 'routine'",
                "UPDATE assessment SET urgency = 'routine' WHERE false",
                "DELETE FROM assessment",
                "TRUNCATE assessment CASCADE",
                "UPDATE checklist_in_use SET checklist_version = 2",
                "DELETE FROM checklist_in_use",
                "TRUNCATE checklist_in_use",
            })
    void theTriggerStopsEvenTheOwner(String change) throws SQLException {
        assertThat(refuses("spring.flyway.user", "spring.flyway.password", change))
                .contains("is append-only");
    }

    /** What the database says to it. */
    private String refuses(String role, String password, String change) throws SQLException {
        try (Connection connection = DriverManager.getConnection(
                        environment.getRequiredProperty("spring.datasource.url"),
                        environment.getRequiredProperty(role),
                        environment.getRequiredProperty(password));
                Statement statement = connection.createStatement()) {
            SQLException refused = catchThrowableOfType(SQLException.class, () -> statement.execute(change));
            assertThat(refused.getSQLState()).isEqualTo(REFUSED);
            assertThat(keeper.get(path).body()).isEqualTo(kept);
            return String.valueOf(refused.getMessage());
        }
    }
}
