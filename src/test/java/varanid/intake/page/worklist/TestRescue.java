package varanid.intake.page.worklist;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.quarantine.Isolation;
import varanid.intake.quarantine.Stage;
import varanid.intake.quarantine.WorkPlace;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.worklist.Facts;
import varanid.intake.worklist.ToldFacts;
import varanid.intake.worklist.Urgency;
import varanid.intake.worklist.WorklistFacts.Room;

/** Makes organisations whose work list says what a test wants it to say. */
@Component
class TestRescue {

    static final Room NORTH = new Room(new UUID(1, 1), "North room");
    static final Room SOUTH = new Room(new UUID(2, 2), "South room");

    private final Organisations organisations;
    private final ToldFacts told;
    private final ApplicationEventPublisher events;
    private final PlatformTransactionManager transactions;
    private final MovableClock clock;

    TestRescue(
            Organisations organisations,
            ToldFacts told,
            ApplicationEventPublisher events,
            PlatformTransactionManager transactions,
            MovableClock clock) {
        this.organisations = organisations;
        this.told = told;
        this.events = events;
        this.transactions = transactions;
        this.clock = clock;
    }

    /** Without animals. */
    Rescue create() {
        Organisation organisation = organisations.create();
        told.speakFor(organisation.id());
        return new Rescue(organisation, organisation.keeper());
    }

    /** Without animals; its list says what is recorded. */
    Rescue ofRecords() {
        Organisation organisation = organisations.create();
        return new Rescue(organisation, organisation.keeper());
    }

    /** With some animals of each kind. */
    Rescue furnished() {
        Rescue rescue = create();
        LocalDate today = rescue.today();
        rescue.add(Facts.of("Reed")
                .in(NORTH)
                .is(Urgency.STAT)
                .isWorse()
                .with("weighing", today.minusDays(9), today.minusDays(3)));
        rescue.add(Facts.of("Sedge").in(SOUTH).is(Urgency.ASAP).at(WorkPlace.SICK, Isolation.STRICT, Stage.ADULT));
        rescue.add(Facts.of("Rush").in(SOUTH).is(Urgency.URGENT).with("stool", today, today.plusDays(2)));
        rescue.add(Facts.of("Nobody looked").is(null));
        rescue.add(Facts.of("Flag").in(NORTH).isWorse().at(WorkPlace.SUSPECT, Isolation.STANDARD, Stage.JUVENILE));
        rescue.add(Facts.of("Mace")
                .in(NORTH)
                .with("weighing", today.minusDays(2), today)
                .with("look", today.minusDays(8), today.minusDays(1)));
        rescue.add(Facts.of("Quiet")
                .in(SOUTH)
                .at(WorkPlace.RESIDENTS, Isolation.STANDARD, Stage.ADULT)
                .with("weighing", today.plusDays(5), today.plusDays(6)));
        return rescue;
    }

    /** An organisation and one of its people. */
    final class Rescue {

        private final Organisation organisation;
        private final Client keeper;

        private Rescue(Organisation organisation, Client keeper) {
            this.organisation = organisation;
            this.keeper = keeper;
        }

        Organisation organisation() {
            return organisation;
        }

        Client keeper() {
            return keeper;
        }

        LocalDate today() {
            return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        }

        UUID add(Facts facts) {
            return add(facts, "{}");
        }

        UUID add(Facts facts, String json) {
            UUID id = UUID.fromString(keeper.post("/api/v1/animals", json).id());
            told.tell(organisation.id(), id, facts.done());
            new TransactionTemplate(transactions)
                    .executeWithoutResult(status -> events.publishEvent(AnimalChanged.of(organisation.id(), id)));
            return id;
        }

        /** Adds one whose record says what changed, of a list of records: new, worse, better, gone, and seen no more. */
        void addWorse(String name) {
            String animal = keeper.post("/api/v1/animals", "{\"name\":\"" + name + "\"}")
                    .header("Location")
                    .orElseThrow();
            look(
                    animal,
                    "{\"sunken-eyes\":\"mild\",\"stuck-shed\":\"patches\",\"dull\":\"mild\",\"mites\":\"absent\","
                            + "\"laboured-breathing\":\"mild\"}",
                    2);
            look(
                    animal,
                    "{\"sunken-eyes\":\"absent\",\"stuck-shed\":\"patches\",\"dull\":\"marked\",\"mites\":\"few\","
                            + "\"open-mouth-breathing\":\"intermittent\"}",
                    1);
        }

        private void look(String animal, String answers, int daysAgo) {
            Answer kept = keeper.post(
                    animal + "/assessments",
                    "{\"checklist\":\"varanid-intake\",\"answers\":" + answers + ",\"occurredAt\":\""
                            + clock.instant().minus(Duration.ofDays(daysAgo)) + "\"}");
            if (kept.status() != 201) {
                throw new IllegalStateException(kept.body());
            }
        }

        /** The ids of all that the API lists there, in its order. */
        List<String> listed(String list) {
            List<String> ids = new ArrayList<>();
            StreamSupport.stream(keeper.get(list).json().get("items").spliterator(), false)
                    .forEach(item -> ids.add(item.at("/animal/id").asString()));
            return ids;
        }
    }
}
