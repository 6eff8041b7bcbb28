package varanid.intake.account;

import java.time.ZoneId;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Who still is an active person, for features that answer somebody who sends no token. */
@Component
public class ActivePeople {

    private final JdbcClient jdbc;

    ActivePeople(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The zone of the person's organisation; nothing where they are no active person of it. */
    public Optional<ZoneId> findZone(UUID organisationId, UUID personId) {
        return jdbc.sql("""
                        SELECT o.zone
                        FROM person p JOIN organisation o ON o.organisation_id = p.organisation_id
                        WHERE p.organisation_id = ? AND p.id = ? AND p.active""")
                .params(organisationId, personId)
                .query(String.class)
                .optional()
                .map(ZoneId::of);
    }

    /** Those of the people who are active. */
    public Set<UUID> only(UUID organisationId, Collection<UUID> people) {
        return people.isEmpty()
                ? Set.of()
                : jdbc.sql("SELECT id FROM person WHERE organisation_id = :organisation AND id IN (:people) AND active")
                        .param("organisation", organisationId)
                        .param("people", people)
                        .query(UUID.class)
                        .set();
    }
}
