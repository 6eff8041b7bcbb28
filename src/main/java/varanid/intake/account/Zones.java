package varanid.intake.account;

import java.time.ZoneId;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** In which time zone an organisation means its dates, for features that work without anybody asking. */
@Component
public class Zones {

    private final JdbcClient jdbc;

    Zones(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The organisation's zone; there must be such an organisation. */
    public ZoneId get(UUID organisationId) {
        return ZoneId.of(jdbc.sql("SELECT zone FROM organisation WHERE organisation_id = ?")
                .param(organisationId)
                .query(String.class)
                .single());
    }
}
