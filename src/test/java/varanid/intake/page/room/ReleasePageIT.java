package varanid.intake.page.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.ServiceTest;

/** What speaks for and against ending a quarantine, who says so, and that a person ends it. */
@ServiceTest
class ReleasePageIT {

    private static final String END = "I decide: its quarantine ends";

    @Autowired
    Organisations organisations;

    private Housed pebble;
    private Browser keeper;
    private Browser vet;

    @BeforeEach
    void someoneStandsThere() {
        pebble = new Housed(organisations);
        keeper = Browser.signedIn(pebble.rescue, pebble.keeper);
        vet = Browser.signedIn(pebble.rescue, pebble.rescue.clinician());
    }

    @Test
    void whatIsMissingIsNamedAndNothingEndsItMeanwhile() {
        Answer page = keeper.get(path(pebble.animal));
        assertThat(page.body())
                .contains("a person decides")
                .contains("Here a vet has to approve.")
                .contains("<b>Not met</b>: <span dir=\"auto\">the days are over</span>")
                .contains("<b>Nobody knows</b>: <span dir=\"auto\">its weight holds</span>")
                .contains("Missing:")
                .contains("To find out:")
                .contains("Not yet:")
                .doesNotContain(END)
                .doesNotContain("I approve the release");
        assertThat(keeper.get("/animals/" + pebble.animal).body()).contains(path(pebble.animal));
        Answer refused = keeper.submit("/rooms", path(pebble.animal), Map.of());
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("It was not ended: something is open");
        assertThat(where(pebble.animal)).isEqualTo("in-quarantine");
    }

    @Test
    void aVetApprovesThenAPersonEndsItOnce() {
        String sorrel = pebble.ready();
        String garden = pebble.room("Garden house", "residents");
        assertThat(keeper.get(path(sorrel)).body()).contains("1 is open").doesNotContain(END);
        assertThat(vet.submit("/rooms", path(sorrel) + "/approvals", Map.of("approves", "true", "key", "vet one"))
                        .header("Location"))
                .contains(path(sorrel) + "?kept=approval");
        Answer met = keeper.get(path(sorrel));
        assertThat(met.body())
                .containsPattern("All \\d+ conditions are met")
                .contains(END)
                .contains("Garden house");
        Answer refused = keeper.submit(
                "/rooms", path(sorrel), Map.of("roomId", pebble.room, "releaseNote", "To the bay", "key", "end one"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("href=\"#roomId\"").contains(">To the bay</textarea>");
        Map<String, String> form = Map.of("roomId", garden, "releaseNote", "To the bay", "key", "end two");
        assertThat(keeper.submit("/rooms", path(sorrel), form).header("Location"))
                .contains(path(sorrel) + "?kept=released");
        assertThat(keeper.submit("/rooms", path(sorrel), form).status()).isEqualTo(303);
        assertThat(pebble.keeper
                        .get("/api/v1/animals/" + sorrel + "/release-decisions")
                        .json()
                        .get("items"))
                .hasSize(1);
        assertThat(keeper.get(path(sorrel)).body())
                .contains("Its quarantine was ended")
                .contains("To the bay")
                .contains("no statement that it is free of infection")
                .doesNotContain(END);
        assertThat(where(sorrel)).isEqualTo("resident");
    }

    @Test
    void aVetsObjectionKeepsItOpen() {
        String sorrel = pebble.ready();
        assertThat(vet.submit(
                                "/rooms",
                                path(sorrel) + "/approvals",
                                Map.of("approves", "false", "vetNote", "Not before the swab is back."))
                        .status())
                .isEqualTo(303);
        assertThat(keeper.get(path(sorrel)).body()).contains("A vet objects").doesNotContain(END);
        assertThat(vet.submit("/rooms", path(sorrel) + "/approvals", Map.of("approves", "perhaps"))
                        .status())
                .isEqualTo(422);
    }

    @Test
    void anAuthoritysHoldIsStatedAndSaidAloud() {
        Answer refused = keeper.submit(
                "/rooms",
                path(pebble.animal) + "/holds",
                Map.of("state", "held", "reference", "A 17", "key", "hold one"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("href=\"#authority\"").contains("value=\"A 17\"");
        assertThat(keeper.submit(
                                "/rooms",
                                path(pebble.animal) + "/holds",
                                Map.of("state", "held", "authority", "Customs at Reed Bank", "reference", "A 17"))
                        .header("Location"))
                .contains(path(pebble.animal) + "?kept=hold");
        assertThat(keeper.get(path(pebble.animal)).body())
                .contains("Customs at Reed Bank")
                .contains("An authority holds this animal.")
                .contains("no authority holds it");
        assertThat(keeper.get("/animals/" + pebble.animal + "/place").body())
                .contains("An authority holds this animal.");
    }

    @Test
    void onlyAVetSpeaksAsOneAndOthersSeeNothing() {
        String approvals = path(pebble.animal) + "/approvals";
        assertThat(keeper.submit("/rooms", approvals, Map.of("approves", "true"))
                        .status())
                .isEqualTo(403);
        assertThat(vet.submit("/rooms", path(pebble.animal) + "/holds", Map.of("state", "none"))
                        .status())
                .isEqualTo(403);
        Organisation other = organisations.create();
        Browser stranger = Browser.signedIn(other, other.keeper());
        assertThat(stranger.get(path(pebble.animal)).status()).isEqualTo(404);
        for (String form : List.of("", "/holds")) {
            assertThat(stranger.submit("/rooms", path(pebble.animal) + form, Map.of("state", "none"))
                            .status())
                    .as(form)
                    .isEqualTo(404);
        }
        assertThat(where(pebble.animal)).isEqualTo("in-quarantine");
    }

    private String where(String animal) {
        return pebble.keeper.get("/api/v1/animals/" + animal + "/quarantine").text("/where");
    }

    private static String path(String animal) {
        return "/animals/" + animal + "/release";
    }
}
