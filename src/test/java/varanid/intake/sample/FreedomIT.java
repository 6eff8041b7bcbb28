package varanid.intake.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.stream.StreamSupport;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** Figures: tables recomputed independently from the formulas in Python, unless a line names another source. */
@ServiceTest
class FreedomIT {

    private static final Offset<Double> PRINTED = within(5e-7);

    @Autowired
    Organisations organisations;

    private Organisations.Organisation organisation;
    private Client keeper;
    private Client clinician;
    private String animal;

    @BeforeEach
    void aWildAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        clinician = organisation.clinician();
        animal = keeper.post("/api/v1/animals", "{\"declaredOrigin\":\"W\"}")
                .header("Location")
                .orElseThrow();
    }

    /** Bayes with independent tests; beta-binomial with a correlation of .2. */
    @ParameterizedTest
    @CsvSource({
        ".30, .70, 1,   0, .700000, .700000",
        ".30, .70, 1,   1, .886076, .886076",
        ".30, .70, 1,   3, .988561, .970712",
        ".30, .70, 1,   5, .998960, .988370",
        ".50, .50, 1,   2, .800000, ",
        ".30, .70, .95, 3, .986683, ",
        ".20, .90, .95, 2, .997238, ",
    })
    void putsBothReadingsOfSoManyNegativesSideBySide(
            String prior, String sensitivity, String specificity, int n, double independent, Double correlated) {
        set(prior, sensitivity, specificity, "");
        negatives("flotation", n);
        JsonNode line = method(freedom(""), "coccidia", "flotation");
        assertThat(line.get("negatives").intValue()).isEqualTo(n);
        assertThat(line.get("samples")).hasSize(n);
        assertThat(line.get("independent").doubleValue()).isCloseTo(independent, PRINTED);
        if (correlated != null) {
            assertThat(line.get("correlated").doubleValue()).isCloseTo(correlated, PRINTED);
        }
    }

    /** 1 - .95^3 = .142625; .90, .95, .99 of .30 .70 .95 take 2, 2 and 4 tests. */
    @Test
    void saysHowManyFalsePositivesToExpectAndHowManyMoreItTakes() {
        set("0.3", "0.7", "0.95", ",\"targetFreedom\":0.99");
        negatives("flotation", 3);
        JsonNode line = method(freedom(""), "coccidia", "flotation");
        assertThat(line.at("/falsePositives/probability").doubleValue()).isCloseTo(.142625, PRINTED);
        assertThat(line.at("/moreForTarget/independent/tests").intValue()).isEqualTo(1);
        assertThat(line.at("/moreForTarget/independent/reachable").booleanValue())
                .isTrue();
    }

    /** With full correlation a repeat adds nothing: .70 / (.70 + .30 x .30) = .886 for ever. */
    @Test
    void saysWhereTheTargetCannotBeReached() {
        set("0.3", "0.7", "1", ",\"correlation\":1");
        negatives("flotation", 2);
        JsonNode more = method(freedom(""), "coccidia", "flotation").at("/moreForTarget");
        assertThat(more.at("/independent/tests").intValue()).isZero();
        assertThat(more.at("/correlated/reachable").booleanValue()).isFalse();
        assertThat(more.at("/correlated").has("tests")).isFalse();
        assertThat(more.at("/correlated/highest").doubleValue()).isCloseTo(.886076, PRINTED);
    }

    /** Martin, Cameron and Greiner 2007: the series of .5, .05, .6, by epiR and recomputed; long run derived by hand. */
    @ParameterizedTest
    @CsvSource({"1, .6934307", "2, .8283616", "3, .9022863", "4, .9375139", "5, .9531833"})
    void showsTheRiskOfNewIntroductionBesideIt(int n, double after) {
        set("0.5", "0.6", "1", ",\"introductionPerRound\":0.05");
        negatives("flotation", n);
        JsonNode introduction = method(freedom(""), "coccidia", "flotation").get("withIntroduction");
        assertThat(introduction.get("freedom").doubleValue()).isCloseTo(after, within(1e-6));
        assertThat(introduction.get("longRun").doubleValue()).isCloseTo(.9649123, within(1e-6));
    }

    @Test
    void countsOnlyPlainNegativesOfMethodsThatLookForIt() {
        set("0.3", "0.7", "1", "");
        String unusable = sample("stool", "01");
        result(unusable, "\"method\":\"flotation\",\"outcome\":\"unusable\"");
        result(sample("stool", "02"), "\"method\":\"flotation\",\"outcome\":\"equivocal\"");
        result(sample("stool", "03"), "\"method\":\"acid-fast-stain\",\"outcome\":\"negative\"");
        result(sample("stool", "04"), "\"method\":\"culture\",\"outcome\":\"negative\"");
        result(sample("oral-swab", "05"), "\"method\":\"flotation\",\"outcome\":\"negative\"");
        sample("stool", "06");
        String twice = sample("stool", "07");
        result(twice, "\"method\":\"flotation\",\"outcome\":\"negative\"");
        result(twice, "\"method\":\"flotation\",\"outcome\":\"negative\"");
        result(
                sample("stool", "08"),
                "\"method\":\"flotation\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"pinworm\"}]");
        JsonNode freedom = freedom("");
        assertThat(method(freedom, "coccidia", "flotation").get("negatives").intValue())
                .isEqualTo(1);
        assertThat(method(freedom, "cryptosporidium", "acid-fast-stain")
                        .get("negatives")
                        .intValue())
                .isEqualTo(1);
        assertThat(method(freedom, "helminths", "flotation").get("negatives").intValue())
                .as("since worms were found")
                .isZero();
        assertThat(agent(freedom, "helminths").at("/lastPositive/agents/0").stringValue())
                .isEqualTo("pinworm");
        assertThat(agent(freedom, "helminths").at("/lastPositive/remark").stringValue())
                .isNotBlank();
        assertThat(freedom.at("/withoutFigure/0/method").stringValue()).isEqualTo("culture");
    }

    @Test
    void beginsAgainAfterAPositiveUnlessItWasCorrected() {
        set("0.3", "0.7", "1", "");
        negatives("flotation", 2);
        String found = sample("stool", "20");
        Answer positive = result(
                found, "\"method\":\"direct-smear\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"coccidia\"}]");
        result(sample("stool", "21"), "\"method\":\"flotation\",\"outcome\":\"negative\"");
        assertThat(method(freedom(""), "coccidia", "flotation").get("negatives").intValue())
                .isEqualTo(1);
        assertThat(method(freedom("?asOf=2026-03-19"), "coccidia", "flotation")
                        .get("negatives")
                        .intValue())
                .as("as of a day before it was taken")
                .isEqualTo(2);
        result(found, "\"method\":\"direct-smear\",\"outcome\":\"unusable\",\"supersedes\":\"" + positive.id() + "\"");
        assertThat(method(freedom(""), "coccidia", "flotation").get("negatives").intValue())
                .isEqualTo(3);
        assertThat(agent(freedom(""), "coccidia").has("lastPositive")).isFalse();
    }

    /** By hand: .3/.7 x .3 x .5 = .0642857 to 1, which is .939597. */
    @Test
    void multipliesWhatSeveralMethodsMissAndSaysThatItIsTheIndependentReading() {
        String body = """
                {"priors": [{"agent": "coccidia", "origin": "wild", "infected": 0.3}],
                 "methods": [{"method": "flotation", "sensitivity": 0.7, "specificity": 1},
                             {"method": "direct-smear", "sensitivity": 0.5, "specificity": 1}],
                 "reason": "for the sum"}""";
        assertThat(clinician
                        .put("/api/v1/settings/sampling", body, "If-Match", "*")
                        .status())
                .isEqualTo(200);
        negatives("flotation", 1);
        assertThat(agent(freedom(""), "coccidia").has("combined"))
                .as("one method alone")
                .isFalse();
        result(sample("stool", "20"), "\"method\":\"direct-smear\",\"outcome\":\"negative\"");
        JsonNode combined = agent(freedom(""), "coccidia").get("combined");
        assertThat(combined.get("independent").doubleValue()).isCloseTo(.939597, PRINTED);
        assertThat(combined.get("remark").stringValue()).contains("Independent reading");
    }

    @Test
    void namesEveryAssumptionWithItsSourceItsWeaknessAndWhoseItIs() {
        JsonNode freedom = freedom("");
        assertThat(freedom.get("origin").stringValue()).isEqualTo("wild");
        assertThat(freedom.get("warning").stringValue()).contains("Assumptions");
        JsonNode prior = agent(freedom, "helminths").get("prior");
        // Herpetology Notes 17, 2024: 95.2 % of 105 wild-caught water monitors.
        assertThat(prior.get("value").doubleValue()).isEqualTo(.95);
        assertThat(prior.get("from").stringValue()).isEqualTo("shipped");
        assertThat(prior.get("source").stringValue()).contains("Herpetology Notes");
        for (String pointer :
                new String[] {"/correlatedReading/correlation", "/targetFreedom", "/introductionPerRound"}) {
            assertThat(freedom.at(pointer).get("source").stringValue()).isNotBlank();
            assertThat(freedom.at(pointer).get("weakness").stringValue()).isNotBlank();
        }
        set("0.3", "0.7", "1", "");
        JsonNode own = agent(freedom(""), "coccidia").get("prior");
        assertThat(own.get("from").stringValue()).isEqualTo("organisation");
        assertThat(own.get("source").stringValue()).isEqualTo("the laboratory's own");
        assertThat(own.get("shippedValue").doubleValue()).isEqualTo(.04);
        assertThat(agent(freedom(""), "helminths").at("/prior/from").stringValue())
                .isEqualTo("shipped");
    }

    @Test
    void isCertainOfNothingAndCallsNoAnimalWhatItCannotKnow() {
        set("0.3", "0.99", "1", "");
        negatives("flotation", 8);
        Answer answer = clinician.get(animal + "/freedom");
        assertThat(method(answer.json(), "coccidia", "flotation")
                        .get("independent")
                        .doubleValue())
                .isLessThan(1);
        assertThat(answer.body().toLowerCase(Locale.ROOT))
                .doesNotContain("healthy")
                .doesNotContain("safe");
    }

    @Test
    void isForCliniciansAndTellsAKeeperWhereToLookInstead() {
        for (Client other : new Client[] {keeper, organisation.administrator()}) {
            Answer refused = other.get(animal + "/freedom");
            assertThat(refused.isProblem("forbidden")).isTrue();
            assertThat(refused.text("/detail")).contains("plan").endsWith(animal + "/quarantine");
        }
        assertThat(organisations.create().clinician().get(animal + "/freedom").status())
                .isEqualTo(404);
        assertThat(clinician.get(animal + "/freedom?asOf=soon").faults()).containsExactly("asOf");
    }

    /** Exact, hypergeometric: N = 30 at 95 %, perfect test; commons-math3 confirms the method elsewhere. */
    @ParameterizedTest
    @CsvSource({".01, 29", ".02, 29", ".05, 23", ".10, 19", ".20, 11", ".30, 8", ".50, 4"})
    void saysHowManyOfThirtyToSample(String prevalence, int sample) {
        set("0.3", "1", "1", "");
        Answer answer = size("&animals=30&prevalence=" + prevalence);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        assertThat(answer.json().get("sample").intValue()).isEqualTo(sample);
        assertThat(answer.json().get("detection").doubleValue()).isGreaterThanOrEqualTo(.95);
        assertThat(answer.text("/animalsFrom")).isEqualTo("asked");
        assertThat(answer.text("/caution")).contains("group");
    }

    /** Exact: ten animals, two infected: Se .8 takes all ten, Se .7 never gets there, its ceiling is .91. */
    @Test
    void saysWhereEvenAllOfThemAreNotEnough() {
        set("0.3", "0.8", "1", "");
        assertThat(size("&animals=10&prevalence=0.2").json().get("sample").intValue())
                .isEqualTo(10);
        set("0.3", "0.7", "1", "");
        JsonNode never = size("&animals=10&prevalence=0.2").json();
        assertThat(never.get("reachable").booleanValue()).isFalse();
        assertThat(never.has("sample")).isFalse();
        assertThat(never.at("/allAnimals/detection").doubleValue()).isCloseTo(.91, PRINTED);
        assertThat(never.get("notReachable").stringValue()).isNotBlank();
        assertThat(never.at("/assumptions/sensitivity/from").stringValue()).isEqualTo("organisation");
    }

    @Test
    void countsTheAnimalsOfTheRegisterUnlessToldOtherwise() {
        String consignment = keeper.post("/api/v1/consignments", "{\"name\":\"Four crates\"}")
                .id();
        String sizes = "/api/v1/consignments/" + consignment
                + "/sample-size?agent=coccidia&method=flotation&prevalence=0.5&confidence=0.9";
        assertThat(keeper.get(sizes).faults()).as("nobody is registered").containsExactly("animals");
        for (int i = 0; i < 4; i++) {
            keeper.post("/api/v1/animals", "{\"consignmentId\":\"" + consignment + "\"}");
        }
        JsonNode size = keeper.get(sizes).json();
        assertThat(size.get("animals").intValue()).isEqualTo(4);
        assertThat(size.get("animalsFrom").stringValue()).isEqualTo("register");
        assertThat(size.get("infectedAtLeast").intValue()).isEqualTo(2);
        // Both infected ones are missed with .3 x .3: all four find one with .91.
        assertThat(size.get("sample").intValue()).isEqualTo(4);
        assertThat(size.get("detection").doubleValue()).isCloseTo(.91, PRINTED);
        assertThat(organisations.create().keeper().get(sizes).status()).isEqualTo(404);
    }

    @Test
    void namesEveryFaultOfAQueryForASampleSize() {
        String consignment =
                keeper.post("/api/v1/consignments", "{\"name\":\"c\"}").id();
        String path = "/api/v1/consignments/" + consignment + "/sample-size";
        assertThat(keeper.get(path).faults()).containsExactlyInAnyOrder("agent", "method", "prevalence");
        assertThat(keeper.get(path + "?agent=mites&method=tea&prevalence=0&confidence=1&animals=0&size=3")
                        .faults())
                .containsExactlyInAnyOrder(
                        "agent", "method", "prevalence", "confidence", "animals", "\u201Csize\u201D");
        assertThat(keeper.get(path + "?agent=coccidia&method=acid-fast-stain&prevalence=1e999&animals=1e9")
                        .faults())
                .containsExactlyInAnyOrder("method", "prevalence", "animals");
    }

    private Answer size(String query) {
        String consignment =
                keeper.post("/api/v1/consignments", "{\"name\":\"c\"}").id();
        return keeper.get(
                "/api/v1/consignments/" + consignment + "/sample-size?agent=coccidia&method=flotation" + query);
    }

    /** Wild animals and coccidia by flotation, with a correlation of .2 unless said. */
    private void set(String prior, String sensitivity, String specificity, String more) {
        String body = "{\"priors\":[{\"agent\":\"coccidia\",\"origin\":\"wild\",\"infected\":" + number(prior)
                + "}],\"methods\":[{\"method\":\"flotation\",\"sensitivity\":" + number(sensitivity)
                + ",\"specificity\":" + number(specificity) + "}]" + more
                + ",\"reason\":\"the laboratory's own\"}";
        Answer answer = clinician.put("/api/v1/settings/sampling", body, "If-Match", "*");
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    }

    private static String number(String text) {
        return text.startsWith(".") ? "0" + text : text;
    }

    private void negatives(String method, int number) {
        for (int i = 1; i <= number; i++) {
            result(sample("stool", "0" + i), "\"method\":\"" + method + "\",\"outcome\":\"negative\"");
        }
    }

    private String sample(String kind, String day) {
        Answer kept = keeper.post(
                animal + "/samples", "{\"kind\":\"" + kind + "\",\"takenAt\":\"2026-03-" + day + "T10:00:00Z\"}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        return kept.header("Location").orElseThrow();
    }

    /** Reported on the day the sample was taken. */
    private Answer result(String sample, String fields) {
        String takenOn = keeper.get(sample).text("/takenOn");
        Answer kept = keeper.post(sample + "/results", "{" + fields + ",\"reportedOn\":\"" + takenOn + "\"}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        return kept;
    }

    private JsonNode freedom(String query) {
        Answer answer = clinician.get(animal + "/freedom" + query);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer.json();
    }

    private static JsonNode agent(JsonNode freedom, String agent) {
        return find(freedom.get("agents"), "agent", agent);
    }

    private static JsonNode method(JsonNode freedom, String agent, String method) {
        return find(agent(freedom, agent).get("methods"), "method", method);
    }

    private static JsonNode find(JsonNode list, String field, String value) {
        return StreamSupport.stream(list.spliterator(), false)
                .filter(each -> each.get(field).stringValue().equals(value))
                .findFirst()
                .orElseThrow();
    }
}
