package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.persistence.EntityManagerFactory;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** How often the database is asked: by what is asked for, and not by how much is recorded. */
@ServiceTest
class StatementsIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    EntityManagerFactory database;

    Statistics statistics;
    Rescue rescue;
    String shed;

    @BeforeEach
    void count() {
        statistics = database.unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
    }

    @AfterEach
    void countNoMore() {
        statistics.setStatisticsEnabled(false);
    }

    private long statements(Runnable what) {
        long before = statistics.getPrepareStatementCount();
        what.run();
        return statistics.getPrepareStatementCount() - before;
    }

    private void record(String animal, int day) {
        rescue.look(animal, day, "{\"mites\":\"absent\",\"ticks\":\"none\"}");
        String at = ",\"occurredAt\":\"" + rescue.day(day) + "T09:00:00Z\"}";
        Rescue.created(
                rescue.keeper.post("/api/v1/animals/" + animal + "/weighings", "{\"value\":200,\"unit\":\"g\"" + at));
        Rescue.created(rescue.keeper.post(
                "/api/v1/animals/" + animal + "/diary",
                "{\"cleaning\":\"full-clean\",\"miteCheck\":\"none-seen\"" + at));
    }

    @Test
    void readingAQuarantineAsksNoMoreOftenAfterManyRecords() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -90);
        record(ada, -89);
        Runnable read = () -> Rescue.ok(rescue.keeper.get("/api/v1/animals/" + ada + "/quarantine"));
        long few = statements(read);
        for (int day = -85; day < 0; day += 5) {
            record(ada, day);
        }
        long many = statements(read);
        System.out.println("statements of a quarantine: " + few + ", with 90 days of records: " + many);
        assertThat(many).isEqualTo(few);
    }

    @Test
    void aWriteInAFullRoomAsksAFewTimesForEachAnimal() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -20);
        for (int i = 1; i < 30; i++) {
            rescue.place(rescue.animal("Bo " + i), shed, -10);
        }
        long look = statements(() -> rescue.look(ada, -1, "{\"mites\":\"absent\"}"));
        long event = statements(() -> rescue.occur(shed, "breach-without-contact", 0));
        long review = statements(() -> Rescue.ok(rescue.keeper.get("/api/v1/animals/" + ada + "/release-review")));
        System.out.println("in a room of 30: a look " + look + ", an event " + event + ", a review " + review);
        assertThat(look).isLessThan(150);
        assertThat(event).isLessThan(30 * 30);
    }
}
