package varanid.intake.diary;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.Normalizer;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class DiaryIT {

    @Autowired
    Organisations organisations;

    @Autowired
    Diary entries;

    @Autowired
    JdbcClient jdbc;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String animal;
    private String diary;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        animal = animal(keeper, "juvenile");
        diary = animal + "/diary";
    }

    @Test
    void keepsEverythingThatCanBeNoticed() {
        Answer kept = keeper.post(diary, """
                {"ate":"some","food":"two crickets","drank":"not-seen","passed":{"stool":"yes","urate":"no"},
                "seen":"basking","demeanour":"watchful","cleaning":"full-clean","miteCheck":"none-seen",
                "note":"shed on one foot","occurredAt":"2026-03-09T18:00:00+01:00"}""");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.json().get("lookNow")).isEmpty();
        Answer again = keeper.get(kept.header("Location").orElseThrow());
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.text("/ate")).isEqualTo("some");
        assertThat(again.text("/food")).isEqualTo("two crickets");
        assertThat(again.text("/drank")).isEqualTo("not-seen");
        assertThat(again.text("/passed/stool")).isEqualTo("yes");
        assertThat(again.text("/passed/urate")).isEqualTo("no");
        assertThat(again.text("/seen")).isEqualTo("basking");
        assertThat(again.text("/demeanour")).isEqualTo("watchful");
        assertThat(again.text("/cleaning")).isEqualTo("full-clean");
        assertThat(again.text("/miteCheck")).isEqualTo("none-seen");
        assertThat(again.text("/note")).isEqualTo("shed on one foot");
        assertThat(again.text("/occurredAt")).isEqualTo("2026-03-09T17:00:00Z");
        assertThat(again.text("/localDate")).isEqualTo("2026-03-09");
        assertThat(again.text("/recordedBy")).isEqualTo(keeper.personId().toString());
        assertThat(again.json().has("lookNow")).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"ate\":\"none\"}",
                "{\"ate\":\"not-offered\"}",
                "{\"drank\":\"no\"}",
                "{\"passed\":{\"urate\":\"not-seen\"}}",
                "{\"seen\":\"not-seen\"}",
                "{\"demeanour\":\"calm\"}",
                "{\"cleaning\":\"spot-clean\"}",
                "{\"miteCheck\":\"none-seen\"}",
                "{\"note\":\"quiet\"}",
            })
    void takesOneThingAlone(String body) {
        Answer kept = keeper.post(diary, body);
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        String field = body.substring(2, body.indexOf('"', 2));
        for (String other : List.of("ate", "drank", "passed", "seen", "demeanour", "cleaning", "miteCheck", "note")) {
            assertThat(kept.json().has(other)).as(other).isEqualTo(other.equals(field));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{}                                                       | #",
                "{\"occurredAt\":\"2026-03-09T12:00:00Z\"}                | #",
                "{\"passed\":{}}                                          | #/passed",
                "{\"ate\":\"a lot\"}                                      | #/ate",
                "{\"ate\":true}                                           | #/ate",
                "{\"note\":\"n\",\"food\":\"mouse\"}                      | #/food",
                "{\"ate\":\"not-offered\",\"food\":\"mouse\"}             | #/food",
                "{\"drank\":\"maybe\"}                                    | #/drank",
                "{\"passed\":{\"stool\":\"soft\"}}                        | #/passed/stool",
                "{\"passed\":\"yes\"}                                     | #/passed",
                "{\"seen\":\"asleep\"}                                    | #/seen",
                "{\"demeanour\":\"tame\"}                                 | #/demeanour",
                "{\"cleaning\":\"none\"}                                  | #/cleaning",
                "{\"miteCheck\":\"not-looked\"}                           | #/miteCheck",
                "{\"note\":\"a\\u0000b\"}                                 | #/note",
                "{\"note\":\"\"}                                          | #/note",
                "{\"note\":\"n\",\"occurredAt\":\"2999-01-01T00:00:00Z\"} | #/occurredAt",
                "{\"note\":\"n\",\"supersedes\":\"the last\"}             | #/supersedes",
                "{\"note\":\"n\",\"mood\":\"calm\"}                       | #/mood",
            })
    void refusesWhatIsFaultyAndKeepsNothing(String body, String pointer) {
        Answer refused = keeper.post(diary, body);
        assertThat(refused.status()).as(refused.body()).isEqualTo(422);
        assertThat(refused.faults()).containsExactly(pointer);
        assertThat(count()).isZero();
    }

    @Test
    void namesEveryFaultAtOnce() {
        Answer refused = keeper.post(diary, """
                {"ate":"much","drank":"often","passed":{"stool":1},"occurredAt":"2999-01-01T00:00:00Z"}""");
        assertThat(refused.faults()).containsExactlyInAnyOrder("#/ate", "#/drank", "#/passed/stool", "#/occurredAt");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script> & \"quotes\" 'and' \\backslashes\\",
                "'; DROP TABLE diary_entry; -- ${jndi:ldap://x} {{7*7}} %s %n =1+1",
                "\u202Eright to left\u202C, \uD83E\uDD8E, \u00E4\u00F6\u00FC, \u4E2D\u6587, e\u0301",
                "lines\nand\ttabs",
            })
    void keepsAHostileNoteAsItIs(String note) {
        Answer kept = keeper.post(diary, "{\"note\":" + JsonMapper.shared().writeValueAsString(note) + "}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(keeper.get(kept.header("Location").orElseThrow()).text("/note"))
                .isEqualTo(Normalizer.normalize(note, Normalizer.Form.NFC));
    }

    @Test
    void correctsByANewEntryAndCountsTheOldOneForNothing() {
        Answer wrong = keeper.post(diary, "{\"cleaning\":\"full-clean\",\"miteCheck\":\"seen\"}");
        Answer right = keeper.post(diary, "{\"cleaning\":\"spot-clean\",\"supersedes\":\"" + wrong.id() + "\"}");
        assertThat(right.status()).as(right.body()).isEqualTo(201);
        Answer again = keeper.post(diary, "{\"note\":\"n\",\"supersedes\":\"" + wrong.id() + "\"}");
        assertThat(again.status()).isEqualTo(409);
        assertThat(again.text("/detail")).contains(right.id());
        assertThat(keeper.get(diary + "/" + wrong.id()).text("/supersededBy")).isEqualTo(right.id());
        Answer list = keeper.get(diary);
        assertThat(texts(list, "id")).containsExactly(wrong.id(), right.id());
        assertThat(list.text("/items/0/supersededBy")).isEqualTo(right.id());
        assertThat(list.text("/items/1/supersedes")).isEqualTo(wrong.id());
        UUID animalId = animalId();
        assertThat(entries.list(organisation.id(), animalId))
                .extracting(entry -> entry.id().toString())
                .containsExactly(right.id());
        assertThat(entries.listDatesOfFullClean(organisation.id(), animalId)).isEmpty();
        assertThat(entries.listMiteChecks(organisation.id(), animalId)).isEmpty();
    }

    @Test
    void refusesToCorrectWhatIsNoEntryOfThisAnimal() {
        String ofAnother = keeper.post(animal(keeper, "adult") + "/diary", "{\"note\":\"n\"}")
                .id();
        Client stranger = organisations.create().keeper();
        String strangers = stranger.post(animal(stranger, "adult") + "/diary", "{\"note\":\"n\"}")
                .id();
        for (String id : List.of(ofAnother, strangers, UUID.randomUUID().toString())) {
            Answer refused = keeper.post(diary, "{\"note\":\"n\",\"supersedes\":\"" + id + "\"}");
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.faults()).containsExactly("#/supersedes");
        }
        assertThat(texts(keeper.get(diary), "id")).isEmpty();
    }

    @Test
    void findsNothingOfAnotherOrganisation() {
        Answer kept = keeper.post(diary, "{\"note\":\"n\"}");
        Client stranger = organisations.create().keeper();
        assertThat(stranger.get(diary).status()).isEqualTo(404);
        assertThat(stranger.get(diary + "/" + kept.id()).status()).isEqualTo(404);
        assertThat(stranger.get(animal + "/demeanour").status()).isEqualTo(404);
        assertThat(stranger.post(diary, "{\"note\":\"n\"}").status()).isEqualTo(404);
        assertThat(stranger.post(diary, "{}").status()).isEqualTo(404);
        assertThat(count()).isEqualTo(1);
        Client clinician = organisation.clinician();
        assertThat(clinician.get(diary).status()).isEqualTo(200);
        assertThat(clinician.get(animal + "/demeanour").status()).isEqualTo(200);
        assertThat(clinician.post(diary, "{\"note\":\"n\"}").status()).isEqualTo(403);
    }

    @Test
    void listsInPagesAndByDates() {
        for (int day = 1; day <= 5; day++) {
            keeper.post(diary, on(day, "\"note\":\"" + day + "\""));
        }
        Answer page = keeper.get(diary + "?limit=2");
        assertThat(texts(page, "note")).containsExactly("1", "2");
        Answer next = keeper.get(page.link("next").orElseThrow());
        assertThat(texts(next, "note")).containsExactly("3", "4");
        Answer some = keeper.get(diary + "?from=2026-03-02&to=2026-03-04&limit=2");
        assertThat(texts(some, "note")).containsExactly("2", "3");
        Answer rest = keeper.get(some.link("next").orElseThrow());
        assertThat(texts(rest, "note")).containsExactly("4");
        assertThat(rest.link("next")).isEmpty();
        assertThat(keeper.get(diary + "?from=2026-03-04&to=2026-03-02").status())
                .isEqualTo(422);
        assertThat(keeper.get(diary + "?from=tuesday").status()).isEqualTo(422);
        assertThat(keeper.get(diary + "?since=2026-03-02").status()).isEqualTo(422);
    }

    @Test
    void keepsOneEntryForOneKey() {
        Answer first = keeper.post(diary, "{\"ate\":\"all\"}", "Idempotency-Key", "k-1");
        Answer second = keeper.post(diary, "{\"ate\":\"all\"}", "Idempotency-Key", "k-1");
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(count()).isEqualTo(1);
        assertThat(keeper.post(diary, "{\"ate\":\"none\"}", "Idempotency-Key", "k-1")
                        .status())
                .isEqualTo(422);
    }

    @Test
    void putsAnEntryOnTheDayOfTheOrganisationsZone() {
        Organisations.Organisation there = organisations.create(ZoneId.of("Pacific/Auckland"));
        Client someone = there.keeper();
        String newcomer = animal(someone, "adult");
        someone.post(
                newcomer + "/diary",
                "{\"cleaning\":\"full-clean\",\"miteCheck\":\"none-seen\",\"occurredAt\":\"2026-03-09T12:00:00Z\"}");
        UUID id = UUID.fromString(newcomer.substring(newcomer.lastIndexOf('/') + 1));
        assertThat(entries.listDatesOfFullClean(there.id(), id)).containsExactly(LocalDate.of(2026, 3, 10));
        assertThat(entries.listMiteChecks(there.id(), id))
                .singleElement()
                .satisfies(check -> assertThat(check.seen()).isFalse());
        assertThat(texts(someone.get(newcomer + "/diary?from=2026-03-10"), "localDate"))
                .containsExactly("2026-03-10");
        assertThat(texts(someone.get(newcomer + "/diary?to=2026-03-09"), "localDate"))
                .isEmpty();
    }

    @Test
    void asksForALookWhenAMiteWasSeenOrItWasDull() {
        Answer both = keeper.post(diary, "{\"miteCheck\":\"seen\",\"demeanour\":\"dull\"}");
        assertThat(reasons(both)).containsExactly("dull", "mite-seen");
        assertThat(both.text("/lookNow/1/text")).startsWith("A mite was seen. Look the animal over now");
        assertThat(reasons(keeper.post(diary, "{\"miteCheck\":\"none-seen\",\"demeanour\":\"frantic\"}")))
                .isEmpty();
    }

    @Test
    void asksForALookWhenItIsSuddenlyCalmBesideASignOfIllness() {
        keeper.post(diary, on(1, "\"demeanour\":\"fearful\",\"ate\":\"all\""));
        keeper.post(diary, on(2, "\"demeanour\":\"frantic\",\"ate\":\"all\""));
        assertThat(reasons(keeper.post(diary, on(3, "\"demeanour\":\"calm\""))))
                .as("it eats, and nobody saw a sign")
                .isEmpty();
        assertThat(reasons(keeper.get(animal + "/demeanour?asOf=2026-03-03"))).isEmpty();
        assertThat(keeper.post(
                                animal + "/assessments",
                                "{\"checklist\":\"varanid-intake\",\"occurredAt\":\"2026-03-03T08:00:00Z\","
                                        + "\"answers\":{\"laboured-breathing\":\"mild\"}}")
                        .status())
                .isEqualTo(201);
        assertThat(reasons(keeper.get(animal + "/demeanour?asOf=2026-03-03"))).containsExactly("suddenly-calm");
        assertThat(reasons(keeper.post(diary, on(3, "\"demeanour\":\"calm\"")))).containsExactly("suddenly-calm");

        diary = animal(keeper, "adult") + "/diary";
        keeper.post(diary, on(1, "\"demeanour\":\"fearful\",\"ate\":\"all\""));
        keeper.post(diary, on(2, "\"demeanour\":\"fearful\",\"ate\":\"none\""));
        assertThat(reasons(keeper.post(diary, on(3, "\"demeanour\":\"calm\""))))
                .as("it does not eat")
                .containsExactly("suddenly-calm");
    }

    @Test
    void tellsHowDemeanourWentAndWhatThatMeansForHousing() {
        String[] words = {"frantic", "frantic", "fearful", "fearful", "uneasy"};
        for (int day = 1; day <= words.length; day++) {
            keeper.post(diary, on(day, "\"demeanour\":\"" + words[day - 1] + "\""));
        }
        keeper.post(diary, on(2, "\"demeanour\":\"dull\""));
        Answer it = keeper.get(animal + "/demeanour?asOf=2026-03-05");
        assertThat(it.status()).as(it.body()).isEqualTo(200);
        assertThat(it.text("/recent")).isEqualTo("fearful");
        assertThat(it.text("/trend/direction")).isEqualTo("calmer");
        assertThat(it.json().at("/trend/calmerPairs").intValue()).isEqualTo(8);
        assertThat(it.json().at("/days")).hasSize(5);
        assertThat(it.text("/dullOn/0")).isEqualTo("2026-03-02");
        assertThat(texts(it, "/advice", "id"))
                .contains("fear-is-not-illness", "cover", "small-footprint", "eye-level", "calmer-lately")
                .doesNotContain("leave-a-frantic-animal", "dull-is-not-calm");
        assertThat(it.json().get("lookNow")).as("dull three days ago").isEmpty();
        assertThat(it.json().get("words")).hasSize(6);

        Answer earlier = keeper.get(animal + "/demeanour?asOf=2026-03-02");
        assertThat(earlier.text("/trend/direction")).isEqualTo("cannot-tell");
        assertThat(reasons(earlier)).containsExactly("dull");
        assertThat(texts(earlier, "/advice", "id")).contains("leave-a-frantic-animal", "dull-is-not-calm");
        Answer muchLater = keeper.get(animal + "/demeanour?asOf=2026-04-30");
        assertThat(muchLater.json().has("recent")).isFalse();
        assertThat(muchLater.json().get("advice")).isEmpty();
    }

    @Test
    void tellsHowLongAgoItAteDrankAndPassedAsFarAsIsKnown() {
        keeper.post(diary, on(1, "\"ate\":\"some\",\"passed\":{\"stool\":\"yes\",\"urate\":\"yes\"}"));
        keeper.post(diary, on(2, "\"ate\":\"none\""));
        keeper.post(diary, on(3, "\"ate\":\"not-offered\",\"passed\":{\"stool\":\"no\"}"));
        Answer it = keeper.get(animal + "/demeanour?asOf=2026-03-03");
        assertThat(it.json().at("/since/ate/atLeastDays").intValue()).isEqualTo(2);
        assertThat(it.json().at("/since/ate/atMostDays").intValue()).isEqualTo(2);
        assertThat(it.text("/since/ate/lastOn")).isEqualTo("2026-03-01");
        assertThat(it.json().at("/since/stool/atLeastDays").intValue()).isEqualTo(1);
        assertThat(it.json().at("/since/stool/atMostDays").intValue()).isEqualTo(2);
        assertThat(it.json().at("/since/urate/atLeastDays").intValue()).isZero();
        assertThat(it.json().at("/since/drank").has("atMostDays")).isFalse();
        assertThat(keeper.get(animal + "/demeanour?asOf=yesterday").status()).isEqualTo(422);
        assertThat(keeper.get(animal + "/demeanour").status()).isEqualTo(200);
    }

    private static String on(int day, String fields) {
        return "{\"occurredAt\":\"2026-03-0" + day + "T12:00:00Z\"," + fields + "}";
    }

    private static List<String> reasons(Answer answer) {
        return texts(answer, "/lookNow", "reason");
    }

    private static List<String> texts(Answer page, String field) {
        return texts(page, "/items", field);
    }

    private static List<String> texts(Answer answer, String list, String field) {
        assertThat(answer.json().at(list).isArray()).as(answer.body()).isTrue();
        return StreamSupport.stream(answer.json().at(list).spliterator(), false)
                .map(each -> each.get(field).stringValue())
                .toList();
    }

    private UUID animalId() {
        return UUID.fromString(animal.substring(animal.lastIndexOf('/') + 1));
    }

    private int count() {
        return jdbc.sql("SELECT count(*) FROM diary_entry WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Integer.class)
                .single();
    }

    private static String animal(Client keeper, String lifeStage) {
        return keeper.post("/api/v1/animals", "{\"lifeStage\":\"" + lifeStage + "\"}")
                .header("Location")
                .orElseThrow();
    }
}
