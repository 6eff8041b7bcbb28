package varanid.intake.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The work list as it follows from what people record, and from nothing else. */
@ServiceTest
class RecordedFactsIT {

    @Autowired
    Organisations organisations;

    private Client keeper;
    private Client vet;
    private String animal;

    @BeforeEach
    void oneAnimal() {
        Organisations.Organisation organisation = organisations.create();
        keeper = organisation.keeper();
        vet = organisation.clinician();
        animal = newAnimal("Sorrel");
    }

    @Test
    void asksForARoomAndALookFromTheFirstMinute() {
        JsonNode item = actNow("Sorrel").orElseThrow();
        assertThat(item.has("urgency")).isFalse();
        assertThat(due(item)).containsExactlyInAnyOrder("place", "first-look");
        assertThat(item.at("/because/0/words").stringValue()).contains("Nobody has looked");
        place(animal);
        look("{\"dull\":\"absent\"}", Duration.ZERO);
        assertThat(due(actNow("Sorrel").orElseThrow())).doesNotContain("place", "first-look");
    }

    @Test
    void putsTheMostUrgentFirstAndSaysWhy() {
        look("{\"stuck-shed\":\"patches\"}", Duration.ZERO);
        String worse = newAnimal("Nettle");
        keeper.post(worse + "/assessments", body("{\"laboured-breathing\":\"marked\"}", Duration.ZERO));
        assertThat(names("/api/v1/worklist/act-now")).startsWith("Nettle");
        JsonNode item = actNow("Nettle").orElseThrow();
        assertThat(item.get("urgency").stringValue()).isEqualTo("stat");
        assertThat(item.at("/because/0/code").stringValue()).isEqualTo("laboured-breathing");
        // In the rounds the sick come last.
        assertThat(names("/api/v1/worklist/rounds")).containsExactly("Sorrel", "Nettle");
    }

    @Test
    void saysWhatIsWorseSinceTheLookBefore() {
        look("{\"sunken-eyes\":\"absent\"}", Duration.ofDays(2));
        assertThat(actNow("Sorrel").orElseThrow().get("worse").booleanValue()).isFalse();
        look("{\"sunken-eyes\":\"mild\"}", Duration.ofDays(1));
        JsonNode item = actNow("Sorrel").orElseThrow();
        assertThat(item.get("worse").booleanValue()).isTrue();
        assertThat(item.at("/because/0/words").stringValue()).startsWith("New or worse: ");
        look("{\"sunken-eyes\":\"absent\"}", Duration.ZERO);
        assertThat(actNow("Sorrel").orElseThrow().get("worse").booleanValue()).isFalse();
    }

    @Test
    void aLossThatIsSureRaisesTheUrgencyWithoutAnotherLook() {
        look("{\"dull\":\"absent\"}", Duration.ofDays(7));
        assertThat(actNow("Sorrel").orElseThrow().get("urgency").stringValue()).isEqualTo("urgent");
        weigh("500", Duration.ofDays(6));
        weigh("380", Duration.ZERO);
        JsonNode item = actNow("Sorrel").orElseThrow();
        // 24 % in six days, on a scale of one gram.
        assertThat(item.get("urgency").stringValue()).isEqualTo("asap");
        assertThat(codes(item)).contains("loss-20");
    }

    @Test
    void asksTheVetAndForTheEndOfTreatmentUntilBothAreRecorded() {
        String room = place(animal);
        look("{\"mites\":\"absent\"}", Duration.ofMinutes(2));
        look("{\"mites\":\"" + worst("mites") + "\"}", Duration.ofMinutes(1));
        assertThat(due(actNow("Sorrel").orElseThrow())).contains("treatment-end");
        JsonNode clock = keeper.get(room + "/clock").json();
        String mites = clock.at("/waitingFor/0/event").stringValue(clock.toString());
        Answer ended = keeper.post(room + "/events", "{\"kind\":\"treatment-ended\",\"about\":\"" + mites + "\"}");
        assertThat(ended.status()).as(ended.body()).isEqualTo(201);
        assertThat(due(actNow("Sorrel").orElseThrow())).doesNotContain("treatment-end");
        Answer sign = keeper.post(
                room + "/events",
                "{\"kind\":\"occurred\",\"cause\":\"other-sign\",\"animalId\":\"" + id(animal) + "\"}");
        assertThat(sign.status()).as(sign.body()).isEqualTo(201);
        assertThat(due(actNow("Sorrel").orElseThrow())).contains("vets-word");
        Answer word = vet.post(
                room + "/events", "{\"kind\":\"vet-spoke\",\"ruling\":\"goes-on\",\"about\":\"" + sign.id() + "\"}");
        assertThat(word.status()).as(word.body()).isEqualTo(201);
        assertThat(due(actNow("Sorrel").orElseThrow())).doesNotContain("vets-word");
    }

    @Test
    void aDullEntryOfTheDiaryAsksForALookUntilThereIsOne() {
        look("{\"dull\":\"absent\"}", Duration.ofHours(2));
        keeper.post(animal + "/diary", "{\"demeanour\":\"dull\",\"occurredAt\":\"" + ago(Duration.ofHours(1)) + "\"}");
        assertThat(due(actNow("Sorrel").orElseThrow())).contains("look-now");
        look("{\"dull\":\"mild\"}", Duration.ZERO);
        assertThat(due(actNow("Sorrel").orElseThrow())).doesNotContain("look-now");
    }

    @Test
    void followsTheNameOfARoom() {
        String room = place(animal);
        Answer renamed = keeper.put(room, "{\"name\":\"South\"}", "If-Match", "*");
        assertThat(renamed.status()).as(renamed.body()).isEqualTo(200);
        assertThat(actNow("Sorrel").orElseThrow().at("/room/name").stringValue())
                .isEqualTo("South");
    }

    @Test
    void asksOnceAboutAllSignsOfOneLookWithOneCause() {
        place(animal);
        look("{\"laboured-breathing\":\"marked\",\"open-mouth-breathing\":\"constant\"}", Duration.ZERO);
        List<String> asked = StreamSupport.stream(
                        actNow("Sorrel").orElseThrow().at("/due").spliterator(), false)
                .filter(task -> task.get("kind").stringValue().equals("vets-word"))
                .map(task -> task.get("title").stringValue())
                .toList();
        assertThat(asked).hasSize(1);
        assertThat(asked.get(0)).contains("Laboured breathing: sides heave", "Open mouth breathing: open all the time");
        assertThat(words(actNow("Sorrel").orElseThrow()))
                .anyMatch(words -> words.startsWith("Laboured breathing: sides heave"))
                .contains("Open mouth breathing: open all the time");
    }

    @Test
    void whoeverLeftIsOnNoList() {
        place(animal);
        assertThat(names("/api/v1/worklist/rounds")).contains("Sorrel");
        Answer left = keeper.post(animal + "/departures", "{\"because\":\"died\",\"explained\":false}");
        assertThat(left.status()).as(left.body()).isEqualTo(201);
        assertThat(names("/api/v1/worklist/rounds")).isEmpty();
        assertThat(names("/api/v1/worklist/act-now")).isEmpty();
    }

    @Test
    void tellsTheNewNameOfARoom() {
        String room = place(animal);
        Answer renamed = keeper.put(
                room, "{\"name\":\"Attic\"}", "If-Match", keeper.get(room).etag());
        assertThat(renamed.status()).as(renamed.body()).isEqualTo(200);
        assertThat(items("/api/v1/worklist/rounds").get(0).at("/room/name").stringValue())
                .isEqualTo("Attic");
    }

    @Test
    void theMorningPageBeginsBothLists() {
        String sick = newAnimal("Nettle");
        keeper.post(sick + "/assessments", body("{\"laboured-breathing\":\"marked\"}", Duration.ZERO));
        JsonNode morning = keeper.get("/api/v1/worklist").json();
        assertThat(morning.at("/actNow/items/0/animal/label").stringValue()).isEqualTo("Nettle");
        assertThat(morning.at("/rounds/items/0/animal/label").stringValue()).isEqualTo("Sorrel");
        for (String list : List.of("actNow", "rounds")) {
            assertThat(morning.at("/" + list + "/more").booleanValue()).isFalse();
            assertThat(items(morning.at("/" + list + "/path").stringValue())).hasSize(2);
        }
        for (int i = 0; i < 19; i++) {
            newAnimal("One more");
        }
        JsonNode many = keeper.get("/api/v1/worklist").json();
        assertThat(many.at("/rounds/items").size()).isEqualTo(20);
        assertThat(many.at("/rounds/more").booleanValue()).isTrue();
        assertThat(keeper.get("/api/v1/worklist?asOf=2020-01-01").status()).isEqualTo(422);
    }

    // ---- helpers

    private String newAnimal(String name) {
        return keeper.post("/api/v1/animals", "{\"name\":\"" + name + "\"}")
                .header("Location")
                .orElseThrow();
    }

    private String place(String which) {
        String room = keeper.post("/api/v1/rooms", "{\"name\":\"North\"}")
                .header("Location")
                .orElseThrow();
        Answer placed = keeper.post(which + "/placements", "{\"roomId\":\"" + id(room) + "\"}");
        assertThat(placed.status()).as(placed.body()).isEqualTo(201);
        return room;
    }

    private void look(String answers, Duration ago) {
        Answer kept = keeper.post(animal + "/assessments", body(answers, ago));
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
    }

    private static String body(String answers, Duration ago) {
        return "{\"checklist\":\"varanid-intake\",\"answers\":" + answers + ",\"occurredAt\":\"" + ago(ago) + "\"}";
    }

    private void weigh(String grams, Duration ago) {
        Answer kept = keeper.post(
                animal + "/weighings",
                "{\"value\":" + grams + ",\"unit\":\"g\",\"resolution\":1,\"scale\":\"kitchen\",\"occurredAt\":\""
                        + ago(ago) + "\"}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
    }

    private String worst(String finding) {
        JsonNode checklist =
                keeper.get("/api/v1/checklists/varanid-intake/versions/1").json();
        JsonNode found = StreamSupport.stream(checklist.at("/findings").spliterator(), false)
                .filter(each -> each.get("id").stringValue().equals(finding))
                .findFirst()
                .orElseThrow();
        return found.at("/levels/1/code").stringValue();
    }

    private static String ago(Duration duration) {
        return Instant.now().minus(duration).truncatedTo(ChronoUnit.MILLIS).toString();
    }

    private Optional<JsonNode> actNow(String name) {
        return items("/api/v1/worklist/act-now").stream()
                .filter(item -> item.at("/animal/label").stringValue().equals(name))
                .findFirst();
    }

    private List<String> names(String list) {
        return items(list).stream()
                .map(item -> item.at("/animal/label").stringValue())
                .toList();
    }

    private List<JsonNode> items(String list) {
        Answer page = keeper.get(list);
        assertThat(page.status()).as(page.body()).isEqualTo(200);
        return StreamSupport.stream(page.json().at("/items").spliterator(), false)
                .toList();
    }

    private static List<String> due(JsonNode item) {
        return StreamSupport.stream(item.at("/due").spliterator(), false)
                .map(task -> task.get("kind").stringValue())
                .toList();
    }

    private static List<String> codes(JsonNode item) {
        return StreamSupport.stream(item.at("/because").spliterator(), false)
                .map(reason -> reason.get("code").stringValue())
                .toList();
    }

    private static List<String> words(JsonNode item) {
        return StreamSupport.stream(item.at("/because").spliterator(), false)
                .map(reason -> reason.get("words").stringValue())
                .toList();
    }

    private static String id(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }
}
