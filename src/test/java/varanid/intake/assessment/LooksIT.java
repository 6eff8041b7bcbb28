package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationListener;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.PayloadApplicationEvent;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What other features are told of the looks at an animal. */
@ServiceTest
class LooksIT {

    @Autowired
    Organisations organisations;

    @Autowired
    Looks looks;

    @Autowired
    ConfigurableApplicationContext context;

    private final List<LookKept> heard = new CopyOnWriteArrayList<>();
    private final ApplicationListener<PayloadApplicationEvent<LookKept>> ear = new Ear();

    private Organisations.Organisation organisation;
    private Client keeper;
    private UUID animal;

    @BeforeEach
    void someAnimal() {
        context.addApplicationListener(ear);
        organisation = organisations.create(ZoneId.of("Pacific/Auckland"));
        keeper = organisation.keeper();
        animal = UUID.fromString(
                keeper.post("/api/v1/animals", "{\"lifeStage\":\"juvenile\"}").id());
    }

    @AfterEach
    void noLongerListen() {
        context.removeApplicationListener(ear);
    }

    @Test
    void tellsWhatWasSeenWithWordsFloorsAndRoutes() {
        keep("""
                "conditions":["cold"],"answers":{"laboured-breathing":"mild","dull":"mild","days-food-refused":9,
                "ticks":"not-observed","mites":"absent"}""", "2026-03-09T12:00:00Z");
        KeptLook look = only();
        assertThat(look.animalId()).isEqualTo(animal);
        assertThat(look.localDate()).as("after midnight in Auckland").isEqualTo(LocalDate.of(2026, 3, 10));
        assertThat(look.urgency()).isEqualTo("asap");
        assertThat(look.isolation()).contains("strict");
        assertThat(look.isolationRoutes()).contains("air", "cohort");
        assertThat(look.settled()).isFalse();
        assertThat(look.signs())
                .extracting(KeptLook.Sign::finding)
                .containsExactly("laboured-breathing", "days-food-refused", "dull");
        assertThat(look.findSign("laboured-breathing"))
                .contains(new KeptLook.Sign(
                        "laboured-breathing",
                        "mild",
                        "Sides move more than they should but the neck stays still",
                        BigDecimal.valueOf(5),
                        Optional.of("asap"),
                        Set.of("air")));
        assertThat(look.findSign("days-food-refused"))
                .as("9 days are long for a juvenile")
                .get()
                .extracting(KeptLook.Sign::level)
                .isEqualTo("long");
        assertThat(look.findSign("mites")).isEmpty();
        assertThat(look.answered("mites")).isTrue();
        assertThat(look.answered("laboured-breathing")).isTrue();
        assertThat(look.answered("dull")).as("explained by the cold").isFalse();
        assertThat(look.answered("ticks")).isFalse();
        assertThat(look.answered("seizure")).isFalse();
        assertThat(look.unseenMustSee())
                .contains("Away from the lamp and with nobody near, does it hold its mouth open?")
                .noneMatch(question -> question.startsWith("Watch it at rest from a distance for 2 minutes"));
    }

    @Test
    void readsEveryKindOfAnswerBackAsItWasScored() {
        keep("""
                "answers":{"weight-trend":{"value":-12.5,"overDays":14},"days-food-refused":{"low":2,"high":9},
                "urate-look":"not-yet-due","cannot-lift-body":"absent"}""", "2026-03-09T12:00:00Z");
        KeptLook look = only();
        assertThat(look.findSign("weight-trend")).isPresent();
        assertThat(look.answered("weight-trend")).isTrue();
        assertThat(look.answered("days-food-refused")).as("brief to long").isFalse();
        assertThat(look.findSign("days-food-refused"))
                .as("at least")
                .get()
                .extracting(KeptLook.Sign::level)
                .isEqualTo("brief");
        assertThat(look.answered("unresponsive")).as("implied").isTrue();
    }

    @Test
    void countsADaysExcuseAsItWasCountedThen() {
        keep("\"conditions\":[\"cold\"],\"answers\":{\"dull\":\"mild\"}", "2026-03-09T12:00:00Z");
        keep("\"conditions\":[\"cold\"],\"answers\":{\"dull\":\"mild\"}", "2026-03-09T13:00:00Z");
        assertThat(list()).extracting(look -> look.answered("dull")).containsExactly(false, true);
        assertThat(list()).allMatch(look -> look.findSign("dull").isPresent());
    }

    @Test
    void listsInTheOrderTheyOccurredAndFindsTheLastUpToADay() {
        String second = keep("\"note\":\"2\"", "2026-03-09T00:00:00Z");
        String first = keep("\"note\":\"1\"", "2026-03-01T00:00:00Z");
        String third = keep("\"note\":\"3\"", "2026-03-09T00:00:00Z");
        assertThat(list()).extracting(look -> look.id().toString()).containsExactly(first, second, third);
        assertThat(latest("2026-03-08")).contains(first);
        assertThat(latest("2026-03-09")).contains(third);
        assertThat(latest("2026-02-28")).isEmpty();
    }

    @Test
    void countsASupersededLookForNothing() {
        String wrong = keep("\"answers\":{\"bleeding\":\"unexplained\"}", "2026-03-09T00:00:00Z");
        String corrected = keep("\"supersedes\":\"" + wrong + "\"", "2026-03-08T00:00:00Z");
        assertThat(list()).extracting(look -> look.id().toString()).containsExactly(corrected);
        assertThat(latest("2026-03-10")).contains(corrected);
        assertThat(looks.list(organisations.create().id(), animal)).isEmpty();
    }

    @Test
    void tellsOfEveryLookThatIsKept() {
        String first = keep("\"answers\":{\"ticks\":\"few\"}", "2026-03-09T00:00:00Z");
        String second = keep("\"supersedes\":\"" + first + "\"", "2026-03-09T00:00:00Z");
        List<LookKept> ours = new ArrayList<>(heard);
        ours.removeIf(event -> !event.organisationId().equals(organisation.id()));
        assertThat(ours).extracting(event -> event.look().id().toString()).containsExactly(first, second);
        assertThat(ours.get(0).supersedes()).isEmpty();
        assertThat(ours.get(0).look().findSign("ticks")).isPresent();
        assertThat(ours.get(1).supersedes()).contains(UUID.fromString(first));
    }

    private String keep(String fields, String occurredAt) {
        Answer kept = keeper.post(
                "/api/v1/animals/" + animal + "/assessments",
                "{\"checklist\":\"varanid-intake\",\"version\":1,\"occurredAt\":\"" + occurredAt + "\"," + fields
                        + "}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        return kept.id();
    }

    private KeptLook only() {
        assertThat(list()).hasSize(1);
        return list().get(0);
    }

    private List<KeptLook> list() {
        return looks.list(organisation.id(), animal);
    }

    private Optional<String> latest(String asOf) {
        return looks.findLatest(organisation.id(), animal, LocalDate.parse(asOf))
                .map(look -> look.id().toString());
    }

    private final class Ear implements ApplicationListener<PayloadApplicationEvent<LookKept>> {
        @Override
        public void onApplicationEvent(PayloadApplicationEvent<LookKept> event) {
            heard.add(event.getPayload());
        }
    }
}
