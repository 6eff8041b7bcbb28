package varanid.intake.account;

import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What people are called, for features that show who said or decided something. */
@Component
public class PeopleNames {

    private final JdbcClient jdbc;

    PeopleNames(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The person's name as it is now, active or not. */
    public Optional<String> find(UUID organisationId, UUID personId) {
        return jdbc.sql("SELECT name FROM person WHERE organisation_id = ? AND id = ?")
                .params(organisationId, personId)
                .query(String.class)
                .optional();
    }
}
