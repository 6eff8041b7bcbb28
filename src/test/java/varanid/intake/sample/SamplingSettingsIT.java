package varanid.intake.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class SamplingSettingsIT {

    private static final String SETTINGS = "/api/v1/settings/sampling";

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    private Organisations.Organisation organisation;
    private Client clinician;

    @BeforeEach
    void someClinic() {
        organisation = organisations.create();
        clinician = organisation.clinician();
    }

    @Test
    void beginsWithWhatIsShippedAndItsSources() {
        Answer shipped = organisation.keeper().get(SETTINGS);
        assertThat(shipped.status()).as(shipped.body()).isEqualTo(200);
        assertThat(shipped.etag()).isEqualTo("\"v0\"");
        assertThat(shipped.json().at("/correlation/value").doubleValue()).isEqualTo(.2);
        assertThat(shipped.json().has("lastChange")).isFalse();
        for (JsonNode prior : shipped.json().get("priors")) {
            assertThat(prior.at("/infected/from").stringValue()).isEqualTo("shipped");
            assertThat(prior.at("/infected/source").stringValue()).isNotBlank();
            assertThat(prior.at("/infected/weakness").stringValue()).isNotBlank();
        }
        // Four agents with figures, for each of six origins.
        assertThat(shipped.json().get("priors")).hasSize(24);
    }

    @Test
    void setsFiguresWithAReasonAndPutsThemBackWhereTheyAreLeftOut() {
        Answer set = put("""
                {"priors": [{"agent": "helminths", "origin": "farmed", "infected": 0.5}],
                 "methods": [{"method": "pcr", "sensitivity": 0.9, "specificity": 0.99}],
                 "correlation": 0.4, "targetFreedom": 0.99, "introductionPerRound": 0,
                 "reason": "own series of 2025"}""", "\"v0\"");
        assertThat(set.status()).as(set.body()).isEqualTo(200);
        assertThat(set.etag()).isEqualTo("\"v1\"");
        JsonNode now = clinician.get(SETTINGS).json();
        assertThat(now).isEqualTo(set.json());
        assertThat(now.at("/correlation/value").doubleValue()).isEqualTo(.4);
        assertThat(now.at("/correlation/from").stringValue()).isEqualTo("organisation");
        assertThat(now.at("/correlation/source").stringValue()).isEqualTo("own series of 2025");
        assertThat(now.at("/correlation/shippedValue").doubleValue()).isEqualTo(.2);
        assertThat(now.at("/introductionPerRound/value").doubleValue()).isZero();
        assertThat(now.at("/lastChange/recordedBy").stringValue())
                .isEqualTo(clinician.personId().toString());
        Answer back = put("{\"reason\":\"as shipped after all\"}", "\"v1\"");
        assertThat(back.etag()).isEqualTo("\"v2\"");
        assertThat(back.text("/correlation/from")).isEqualTo("shipped");
    }

    @Test
    void needsTheVersionThatWasRead() {
        String body = "{\"reason\":\"r\"}";
        assertThat(clinician.put(SETTINGS, body).status()).isEqualTo(428);
        assertThat(put(body, "\"v0\"").status()).isEqualTo(200);
        assertThat(put(body, "\"v0\"").isProblem("changed-meanwhile")).isTrue();
        assertThat(count()).isEqualTo(1);
    }

    @Test
    void isForCliniciansAndAdministratorsToSet() {
        String body = "{\"reason\":\"r\"}";
        Answer refused = organisation.keeper().put(SETTINGS, body, "If-Match", "*");
        assertThat(refused.isProblem("forbidden")).isTrue();
        assertThat(count()).isZero();
        assertThat(organisation
                        .administrator()
                        .put(SETTINGS, body, "If-Match", "*")
                        .status())
                .isEqualTo(200);
        assertThat(clinician.put(SETTINGS, body, "If-Match", "*").status()).isEqualTo(200);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"correlation\":1.1                                               | #/correlation",
                "\"correlation\":\"0.2\"                                           | #/correlation",
                "\"targetFreedom\":1                                               | #/targetFreedom",
                "\"targetFreedom\":0                                               | #/targetFreedom",
                "\"introductionPerRound\":1                                        | #/introductionPerRound",
                "\"introductionPerRound\":-0.1                                     | #/introductionPerRound",
                "\"correlation\":0.1234567                                         | #/correlation",
                "\"priors\":[{\"agent\":\"tapeworm\",\"origin\":\"wild\",\"infected\":0.5}]  | #/priors/0/agent",
                "\"priors\":[{\"agent\":\"coccidia\",\"origin\":\"W\",\"infected\":0.5}]     | #/priors/0/origin",
                "\"priors\":[{\"agent\":\"coccidia\",\"origin\":\"wild\",\"infected\":0}]    | #/priors/0/infected",
                "\"priors\":[{\"agent\":\"coccidia\",\"origin\":\"wild\",\"infected\":1}]    | #/priors/0/infected",
                "\"priors\":[{\"agent\":\"coccidia\",\"origin\":\"wild\"}]                   | #/priors/0/infected",
                "\"methods\":[{\"method\":\"culture\",\"sensitivity\":0.7,\"specificity\":1}] | #/methods/0/method",
                "\"methods\":[{\"method\":\"pcr\",\"sensitivity\":0.5,\"specificity\":0.5}]  | #/methods/0",
                "\"methods\":[{\"method\":\"pcr\",\"sensitivity\":0,\"specificity\":1}]      | #/methods/0",
                "\"methods\":[{\"method\":\"pcr\",\"sensitivity\":0.7}]                      | #/methods/0/specificity",
                "\"colour\":1                                                      | #/colour",
            })
    void refusesWhatCannotBeAndKeepsNothing(String fields, String pointer) {
        Answer answer = put("{\"reason\":\"r\"," + fields + "}", "*");
        assertThat(answer.status()).as(answer.body()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly(pointer);
        assertThat(count()).isZero();
    }

    @Test
    void namesEveryFaultAtOnce() {
        Answer answer = put("""
                {"correlation": 2, "targetFreedom": 1,
                 "priors": [{"agent": "coccidia", "origin": "wild", "infected": 0.5},
                            {"agent": "coccidia", "origin": "wild", "infected": 0.6}],
                 "methods": [{"method": "pcr", "sensitivity": 0.7, "specificity": 1},
                             {"method": "pcr", "sensitivity": 0.7, "specificity": 1}]}""", "*");
        assertThat(answer.faults())
                .containsExactlyInAnyOrder("#/correlation", "#/targetFreedom", "#/priors/1", "#/methods/1", "#/reason");
    }

    @Test
    void keepsEveryChangeReadableInPages() {
        List<String> reasons = List.of("first", "second <b>", "third");
        for (String reason : reasons) {
            put("{\"correlation\":0.3,\"reason\":\"" + reason + "\"}", "*");
        }
        List<String> read = new ArrayList<>();
        Answer page = organisation.keeper().get(SETTINGS + "/history?limit=2");
        page.json().get("items").forEach(item -> read.add(item.get("reason").stringValue()));
        assertThat(page.json().at("/items/1/version").intValue()).isEqualTo(2);
        assertThat(page.json().at("/items/1/figures/correlation").doubleValue()).isEqualTo(.3);
        clinician
                .get(page.link("next").orElseThrow())
                .json()
                .get("items")
                .forEach(item -> read.add(item.get("reason").stringValue()));
        assertThat(read).isEqualTo(reasons);
    }

    @Test
    void belongsToOneOrganisationAlone() {
        put("{\"correlation\":0.3,\"reason\":\"ours\"}", "*");
        Client stranger = organisations.create().clinician();
        assertThat(stranger.get(SETTINGS).text("/correlation/from")).isEqualTo("shipped");
        assertThat(stranger.get(SETTINGS + "/history").json().get("items")).isEmpty();
    }

    private Answer put(String body, String ifMatch) {
        return clinician.put(SETTINGS, body, "If-Match", ifMatch);
    }

    private int count() {
        return jdbc.sql("SELECT count(*) FROM sampling_setting WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Integer.class)
                .single();
    }
}
