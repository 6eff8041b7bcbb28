package varanid.intake.demo;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import varanid.intake.account.OthersAtTheMachine;

/** The demo's people, so that it can be looked at in a browser by each of them. */
@Component
class DemoPeople implements OthersAtTheMachine {

    private final JdbcClient jdbc;

    DemoPeople(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Other> list() {
        return jdbc.sql("""
                        SELECT organisation_id, id, name
                        FROM person JOIN demo_organisation USING (organisation_id)
                        WHERE active ORDER BY id""")
                .query((row, number) -> new Other(
                        row.getObject("organisation_id", UUID.class),
                        row.getObject("id", UUID.class),
                        row.getString("name")))
                .list();
    }
}
