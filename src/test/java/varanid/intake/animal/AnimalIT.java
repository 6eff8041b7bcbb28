package varanid.intake.animal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class AnimalIT {

    private static final String ANIMALS = "/api/v1/animals";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Test
    void refusesNothingForWantOfADetail() {
        Client keeper = organisations.create().keeper();
        Answer registered = keeper.post(ANIMALS, "{}");
        assertThat(registered.status()).isEqualTo(201);
        assertThat(registered.text("/lifeStage")).isEqualTo("unknown");
        assertThat(registered.text("/origin/steering")).isEqualTo("U");
        assertThat(remarks(registered)).contains("#/species", "#/lifeStage");
        assertThat(registered.text("/recordedBy")).isEqualTo(keeper.personId().toString());
    }

    @Test
    void givesBackWhatWasRegistered() {
        Client keeper = organisations.create().keeper();
        String consignment = keeper.post("/api/v1/consignments", "{\"name\":\"Twelve from a shop\"}")
                .id();
        Answer registered = keeper.post(ANIMALS, """
                {"name": "Bit", "tag": "A-7", "species": {"name": "varanus salvator"}, "lifeStage": "juvenile",
                 "sex": "unknown", "declaredOrigin": "C", "evidence": {"ticks": "yes", "scars": "unknown"},
                 "papers": [{"kind": "cites-export-permit", "number": " 24ID000123/AB ", "issuedOn": "2026-01-01",
                             "validUntil": "2026-12-31"}],
                 "transponder": "985 112 345 678 903", "consignmentId": "%s", "arrivedOn": "2026-02-01",
                 "notes": "two lines\\nof it",
                 "weights": [{"value": 1.25, "unit": "[oz_av]", "resolution": 0.05, "scale": "kitchen",
                              "occurredAt": "2026-02-01T10:00:00+01:00"}],
                 "lengths": [{"of": "snout-vent", "value": 12.5, "unit": "cm"}]}
                """.formatted(consignment));
        assertThat(registered.status()).isEqualTo(201);
        String path = registered.header("Location").orElseThrow();
        assertThat(path).isEqualTo(ANIMALS + "/" + registered.id());
        Answer read = keeper.get(path);
        assertThat(read.body()).isEqualTo(registered.body());
        assertThat(read.etag()).isEqualTo(registered.etag());
        assertThat(read.text("/species/name")).isEqualTo("Varanus salvator");
        assertThat(read.text("/species/authority")).isEqualTo("(Laurenti, 1768)");
        assertThat(read.text("/species/citesAppendix")).isEqualTo("II");
        assertThat(read.text("/origin/assessed")).isEqualTo("wild-likely");
        assertThat(read.text("/papers/0/number")).isEqualTo("24ID000123/AB");
        assertThat(read.text("/transponder/number")).isEqualTo("985112345678903");
        assertThat(read.text("/consignmentId")).isEqualTo(consignment);
        assertThat(read.json().at("/weights/0/grams").decimalValue()).isEqualByComparingTo("35.43690390625");
        assertThat(read.text("/weights/0/occurredAt")).isEqualTo("2026-02-01T09:00:00Z");
        assertThat(read.json().at("/lengths/0/millimetres").decimalValue()).isEqualByComparingTo("125");
        assertThat(remarks(read)).contains("#/papers/0");
    }

    @Test
    void remarksOnWhatAPersonShouldLookAt() {
        Answer registered = organisations.create().keeper().post(ANIMALS, """
                {"species": {"name": "Varanus salvator", "authority": "Somebody, 1900"}, "lifeStage": "adult",
                 "declaredOrigin": "O", "transponder": "123456789",
                 "papers": [{"kind": "other", "validUntil": "2025-01-01"}], "arrivedOn": "2026-01-01",
                 "weights": [{"value": 36, "unit": "g", "resolution": 5},
                             {"value": 150, "unit": "kg", "resolution": 1, "confirmed": true}],
                 "lengths": [{"of": "snout-vent", "value": 30, "unit": "cm"}, {"of": "tail", "value": 40, "unit": "cm"},
                             {"of": "total", "value": 75, "unit": "cm"}]}
                """);
        assertThat(registered.status()).isEqualTo(201);
        assertThat(remarks(registered))
                .containsExactlyInAnyOrder(
                        "#/species/authority",
                        "#/declaredOrigin",
                        "#/transponder",
                        "#/papers/0",
                        "#/weights/0/resolution",
                        "#/weights/1/value",
                        "#/lengths");
        assertThat(remarks(organisations.create().keeper().post(ANIMALS, """
                {"species": {"name": "Varanus nobody"}, "declaredOrigin": "D", "transponder": "899000000000001",
                 "lifeStage": "adult",
                 "lengths": [{"of": "snout-vent", "value": 30, "unit": "cm"}, {"of": "tail", "value": 43, "unit": "cm"},
                             {"of": "total", "value": 75, "unit": "cm"}]}
                """)))
                .containsExactlyInAnyOrder("#/species", "#/declaredOrigin", "#/transponder");
    }

    @Test
    void takesTheSourceCodeOfRegisteredOperationsForAppendixOneOnly() {
        Client keeper = organisations.create().keeper();
        String body = "{\"species\":{\"name\":\"%s\"},\"declaredOrigin\":\"D\"}";
        assertThat(keeper.post(ANIMALS, body.formatted("Varanus komodoensis")).status())
                .isEqualTo(201);
        assertThat(keeper.post(ANIMALS, body.formatted("Varanus salvator")).faults())
                .containsExactly("#/declaredOrigin");
    }

    @Test
    void changesWhatIsKnownAndKeepsTheFirstReadings() {
        Client keeper = organisations.create().keeper();
        Answer first =
                keeper.post(ANIMALS, "{\"name\":\"a\",\"sex\":\"male\",\"weights\":[{\"value\":36,\"unit\":\"g\"}]}");
        String path = ANIMALS + "/" + first.id();
        Answer changed = keeper.put(path, "{\"name\":\"b\"}", "If-Match", first.etag());
        assertThat(changed.status()).isEqualTo(200);
        assertThat(changed.etag()).isNotEqualTo(first.etag());
        assertThat(changed.text("/name")).isEqualTo("b");
        assertThat(changed.text("/sex")).isEqualTo("unknown");
        assertThat(changed.json().get("weights")).hasSize(1);
        assertThat(keeper.get(path).body()).isEqualTo(changed.body());
        assertThat(keeper.put(path, "{\"weights\":[]}", "If-Match", changed.etag())
                        .faults())
                .containsExactly("#/weights");
    }

    @Test
    void changesNothingWithoutTheVersionThatWasRead() {
        Client keeper = organisations.create().keeper();
        Answer first = keeper.post(ANIMALS, "{\"name\":\"a\"}");
        String path = ANIMALS + "/" + first.id();
        assertThat(keeper.put(path, "{}").isProblem("precondition-required")).isTrue();
        assertThat(keeper.put(path, "{}", "If-Match", "\"v99\"").isProblem("changed-meanwhile"))
                .isTrue();
        assertThat(keeper.put(path, "{}", "If-Match", "W/" + first.etag()).status())
                .isEqualTo(412);
        assertThat(keeper.get(path).text("/name")).isEqualTo("a");
    }

    @Test
    void letsOneOfManyChangesOfTheSameVersionThrough() throws Exception {
        Client keeper = organisations.create().keeper();
        Answer first = keeper.post(ANIMALS, "{\"name\":\"a\"}");
        String path = ANIMALS + "/" + first.id();
        int many = 8;
        CyclicBarrier together = new CyclicBarrier(many);
        ExecutorService threads = Executors.newFixedThreadPool(many);
        try {
            List<Callable<Answer>> changes = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                String body = "{\"name\":\"n" + i + "\"}";
                changes.add(() -> {
                    together.await();
                    return keeper.put(path, body, "If-Match", first.etag());
                });
            }
            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> answer : threads.invokeAll(changes)) {
                answers.add(answer.get());
            }
            assertThat(answers).extracting(Answer::status).containsOnly(200, 412);
            List<Answer> through =
                    answers.stream().filter(answer -> answer.status() == 200).toList();
            assertThat(through).hasSize(1);
            assertThat(keeper.get(path).body()).isEqualTo(through.get(0).body());
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void listsPageByPageWithoutSkippingOrRepeating() {
        Client keeper = organisations.create().keeper();
        String consignment =
                keeper.post("/api/v1/consignments", "{\"name\":\"c\"}").id();
        List<String> expected = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            expected.add(keeper.post(ANIMALS, "{\"consignmentId\":\"" + consignment + "\"}")
                    .id());
            keeper.post(ANIMALS, "{}");
        }
        List<String> seen = new ArrayList<>();
        Optional<String> next = Optional.of(ANIMALS + "?limit=3&consignment=" + consignment);
        int pages = 0;
        while (next.isPresent()) {
            Answer page = keeper.get(next.get());
            page.json().get("items").forEach(item -> seen.add(item.get("id").stringValue()));
            if (pages++ == 0) {
                // What is added meanwhile comes at the end.
                expected.add(keeper.post(ANIMALS, "{\"consignmentId\":\"" + consignment + "\"}")
                        .id());
            }
            next = page.link("next");
        }
        assertThat(seen).containsExactlyElementsOf(expected);
        assertThat(pages).isEqualTo(3);
        assertThat(keeper.get(ANIMALS).json().get("items")).hasSize(15);
    }

    @Test
    void takesTheDateOfTheOrganisationsZone() {
        ZoneId ahead = ZoneId.of("Pacific/Kiritimati");
        LocalDate there = ZonedDateTime.now(clock).withZoneSameInstant(ahead).toLocalDate();
        Client keeper = organisations.create(ahead).keeper();
        assertThat(keeper.post(ANIMALS, "{\"arrivedOn\":\"" + there + "\"}").status())
                .isEqualTo(201);
        assertThat(keeper.post(ANIMALS, "{\"arrivedOn\":\"" + there.plusDays(1) + "\"}")
                        .faults())
                .containsExactly("#/arrivedOn");
    }

    @Test
    void needsAKeeper() {
        Organisations.Organisation rescue = organisations.create();
        assertThat(rescue.clinician().post(ANIMALS, "{}").isProblem("forbidden"))
                .isTrue();
        assertThat(rescue.clinician().get(ANIMALS).status()).isEqualTo(200);
        assertThat(rescue.administrator().post(ANIMALS, "{}").status()).isEqualTo(201);
    }

    private static List<String> remarks(Answer answer) {
        JsonNode remarks = answer.json().get("remarks");
        return StreamSupport.stream(remarks.spliterator(), false)
                .map(remark -> remark.get("pointer").stringValue())
                .toList();
    }
}
