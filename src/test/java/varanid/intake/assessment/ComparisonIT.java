package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class ComparisonIT {

    private static final List<String> LISTS =
            List.of("new", "worse", "changed", "firstSeen", "noLongerSeen", "cannotTell", "better", "gone", "same");

    @Autowired
    Organisations organisations;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String assessments;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        assessments = assessmentsOfANewAnimal(keeper);
    }

    @Test
    void saysWhatIsNewWorseBetterGoneAndNoLongerSeen() {
        String first = keep(1, """
                "answers":{"laboured-breathing":"absent","ticks":"few","mites":"few","nasal-discharge":"clear",
                "dull":"marked","lump":"present","sunken-eyes":"absent"}""");
        String second = keep(2, """
                "answers":{"laboured-breathing":"mild","ticks":"many","mites":"absent","nasal-discharge":"not-observed",
                "dull":"mild","lump":"present","sunken-eyes":"absent","bleeding":"absent"}""");
        Answer it = compare(second);
        assertThat(findings(it, "new")).containsExactly("laboured-breathing");
        assertThat(findings(it, "worse")).containsExactly("ticks");
        assertThat(findings(it, "better")).containsExactly("dull");
        assertThat(findings(it, "gone")).containsExactly("mites");
        assertThat(findings(it, "noLongerSeen")).containsExactly("nasal-discharge");
        assertThat(findings(it, "firstSeen")).containsExactly("bleeding");
        assertThat(findings(it, "same")).containsExactly("sunken-eyes", "lump");
        assertThat(it.text("/before/id")).isEqualTo(first);
        assertThat(it.text("/after/id")).isEqualTo(second);
        assertThat(it.text("/new/0/before/level")).isEqualTo("absent");
        assertThat(it.text("/new/0/after/label"))
                .isEqualTo("Sides move more than they should but the neck stays still");
        assertThat(it.text("/headline"))
                .startsWith(
                        "New. Laboured breathing: sides move more than they should but the neck stays still. Worse. ")
                .contains("Not seen this time, which is not the same as gone. ");
        assertThat(it.json().at("/before/points/lowest").decimalValue()).isPositive();
        assertThat(it.json().at("/after/points/highest").decimalValue())
                .isGreaterThan(it.json().at("/after/points/lowest").decimalValue());
        assertThat(it.text("/after/isolation")).isEqualTo("strict");
    }

    @Test
    void saysToCallForANewSignThatCannotWaitAndHowSoon() {
        keep(1, "\"answers\":{\"laboured-breathing\":\"absent\"}");
        String second = keep(2, "\"answers\":{\"laboured-breathing\":\"mild\"}");
        Answer it = compare(second);
        assertThat(it.json().at("/call/needed").booleanValue()).isTrue();
        assertThat(it.text("/call/urgency")).isEqualTo("asap");
        assertThat(it.text("/call/label")).isEqualTo("vet within 24 hours");
        assertThat(it.text("/call/by")).isEqualTo("2026-03-03T12:00:00Z");
        assertThat(it.text("/call/because/0"))
                .isEqualTo("Laboured breathing: sides move more than they should but the neck stays still");
        assertThat(it.text("/call/because/1")).isEqualTo("the look now asks for: vet within 24 hours");
        assertThat(it.text("/urgencyBecame")).isEqualTo("higher");
        // The next step of the same sign is the one with the floor "vet now".
        assertThat(it.text("/callIf/0/finding")).isEqualTo("laboured-breathing");
        assertThat(it.text("/callIf/0/level")).isEqualTo("marked");
        assertThat(it.text("/callIf/0/urgencyLabel")).isEqualTo("vet now");
        assertThat(it.text("/callIf/0/within")).isEqualTo("PT0S");
    }

    @Test
    void saysToCallForANewUrgentSignEvenWhereTheUrgencyIsNoHigher() {
        keep(1, "\"answers\":{\"laboured-breathing\":\"mild\",\"open-mouth-breathing\":\"absent\"}");
        String second =
                keep(2, "\"answers\":{\"laboured-breathing\":\"mild\",\"open-mouth-breathing\":\"intermittent\"}");
        Answer it = compare(second);
        assertThat(it.text("/urgencyBecame")).isEqualTo("same");
        assertThat(it.json().at("/call/needed").booleanValue()).isTrue();
        assertThat(it.text("/call/because/0"))
                .isEqualTo("Open mouth breathing: open for more than a minute and then shut again");
    }

    @Test
    void doesNotSayToCallWhereNothingIsNewOrWorse() {
        keep(1, "\"answers\":{\"laboured-breathing\":\"mild\"}");
        String same = keep(2, "\"answers\":{\"laboured-breathing\":\"mild\"}");
        assertThat(compare(same).json().at("/call/needed").booleanValue()).isFalse();
        assertThat(compare(same).text("/headline"))
                .isEqualTo("No difference in what was seen both times. Urgency: vet within 24 hours, as before.");
    }

    @Test
    void warnsThatALowerUrgencyMayOnlyMeanThatSomethingWasNotSeen() {
        keep(1, "\"answers\":{\"laboured-breathing\":\"mild\"}");
        String second = keep(2, "\"answers\":{\"laboured-breathing\":\"not-observed\"}");
        Answer it = compare(second);
        assertThat(it.text("/urgencyBecame")).isEqualTo("lower");
        assertThat(findings(it, "gone")).isEmpty();
        assertThat(findings(it, "better")).isEmpty();
        assertThat(it.text("/headline"))
                .contains(
                        "Not seen this time, which is not the same as gone. Laboured breathing: sides move more than they should");
    }

    @Test
    void asksToLookAgainWhereTheUrgencyRoseOnlyForWhatWasNotSeen() {
        String allSeen = """
                "origin":"C","answers":{"laboured-breathing":"absent","open-mouth-breathing":"absent",
                "tissue-from-vent":"absent","bleeding":"absent","cannot-lift-body":"absent","unresponsive":"absent"}""";
        Answer first = kept(1, allSeen);
        assertThat(first.text("/urgency/recommended")).isEqualTo("routine");
        String second = keep(2, "\"origin\":\"C\",\"answers\":{\"bleeding\":\"absent\"}");
        Answer it = compare(second);
        assertThat(it.text("/urgencyBecame")).isEqualTo("higher");
        assertThat(it.json().at("/call/needed").booleanValue()).isFalse();
        assertThat(it.text("/call/lookAgainAt")).isEqualTo("2026-03-02T14:00:00Z");
    }

    @Test
    void saysThatAFirstLookHasNothingToCompareWithAndWhatToWatchFor() {
        String only = keep(1, "\"answers\":{\"laboured-breathing\":\"mild\",\"ticks\":\"none\"}");
        Answer it = compare(only);
        assertThat(it.status()).isEqualTo(200);
        assertThat(it.json().has("before")).isFalse();
        assertThat(it.json().has("urgencyBecame")).isFalse();
        assertThat(it.text("/headline"))
                .isEqualTo("There is no earlier look to compare with. This one asks for: vet within 24 hours.");
        assertThat(findings(it, "firstSeen")).containsExactly("laboured-breathing", "ticks");
        assertThat(it.json().at("/call/needed").booleanValue()).isTrue();
        assertThat(it.text("/callIf/0/level")).isEqualTo("marked");
    }

    @Test
    void givesOnlyTheSameForALookWithItself() {
        String only =
                keep(1, "\"conditions\":[\"cold\"],\"answers\":{\"dull\":\"mild\",\"no-tongue-flick\":\"present\"}");
        Answer it = keeper.get(assessments + "/" + only + "/comparison?with=" + only);
        for (String list : LISTS) {
            assertThat(findings(it, list)).as(list).hasSize(list.equals("same") ? 2 : 0);
        }
        assertThat(it.json().at("/call/needed").booleanValue()).isFalse();
        assertThat(it.text("/same/0/after/but")).isEqualTo("explained");
    }

    @Test
    void putsTheLookThatOccurredFirstBeforeTheOther() {
        String first = keep(1, "\"answers\":{\"ticks\":\"few\"}");
        String second = keep(2, "\"answers\":{\"ticks\":\"many\"}");
        Answer there = keeper.get(assessments + "/" + second + "/comparison?with=" + first);
        Answer back = keeper.get(assessments + "/" + first + "/comparison?with=" + second);
        assertThat(findings(there, "worse")).containsExactly("ticks");
        assertThat(back.body()).isEqualTo(there.body());
    }

    @Test
    void comparesWithTheLastLookThatStandsAndNotWithACorrectedOne() {
        String first = keep(1, "\"answers\":{\"ticks\":\"few\"}");
        String wrong = keep(2, "\"answers\":{\"ticks\":\"many\"}");
        String corrected = keep(2, "\"answers\":{\"ticks\":\"few\"},\"supersedes\":\"" + wrong + "\"");
        assertThat(compare(corrected).text("/before/id")).isEqualTo(first);
        String third = keep(3, "\"answers\":{\"ticks\":\"few\"}");
        assertThat(compare(third).text("/before/id")).isEqualTo(corrected);
        assertThat(keeper.get(assessments + "/" + third + "/comparison?with=" + wrong)
                        .text("/before/id"))
                .as("asked for by name")
                .isEqualTo(wrong);
    }

    @Test
    void refusesWhatIsNoLookOfThisAnimal() {
        String only = keep(1, "\"note\":\"1\"");
        String another = keeper.post(assessmentsOfANewAnimal(keeper), look(1, "\"note\":\"1\""))
                .id();
        Client stranger = organisations.create().keeper();
        String strangers = stranger.post(assessmentsOfANewAnimal(stranger), look(1, "\"note\":\"1\""))
                .id();
        for (String with : List.of(another, strangers, UUID.randomUUID().toString(), "the-last", "%00", "")) {
            Answer refused = keeper.get(assessments + "/" + only + "/comparison?with=" + with);
            assertThat(refused.status()).as(with).isEqualTo(422);
            assertThat(refused.isProblem("invalid-request")).isTrue();
        }
        assertThat(keeper.get(assessments + "/" + only + "/comparison?wiht=" + only)
                        .status())
                .isEqualTo(422);
        assertThat(keeper.get(assessments + "/" + another + "/comparison").status())
                .isEqualTo(404);
        assertThat(stranger.get(assessments + "/" + only + "/comparison").status())
                .isEqualTo(404);
        assertThat(organisation
                        .clinician()
                        .get(assessments + "/" + only + "/comparison")
                        .status())
                .isEqualTo(200);
    }

    private String keep(int day, String fields) {
        return kept(day, fields).id();
    }

    private Answer kept(int day, String fields) {
        Answer kept = keeper.post(assessments, look(day, fields));
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        return kept;
    }

    private static String look(int day, String fields) {
        return "{\"checklist\":\"varanid-intake\",\"version\":1,\"occurredAt\":\"2026-03-0" + day + "T12:00:00Z\","
                + fields + "}";
    }

    private Answer compare(String id) {
        Answer answer = keeper.get(assessments + "/" + id + "/comparison");
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private static List<String> findings(Answer comparison, String list) {
        assertThat(comparison.json().has(list)).as(list).isTrue();
        return StreamSupport.stream(comparison.json().get(list).spliterator(), false)
                .map(each -> each.get("finding").stringValue())
                .toList();
    }

    private static String assessmentsOfANewAnimal(Client keeper) {
        Answer animal = keeper.post("/api/v1/animals", "{\"lifeStage\":\"juvenile\"}");
        return animal.header("Location").orElseThrow() + "/assessments";
    }
}
