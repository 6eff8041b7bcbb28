package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class QuarantineSettingsIT {

    private static final String SETTINGS = "/api/v1/settings/quarantine";

    @Autowired
    Organisations organisations;

    Client administrator;
    Organisations.Organisation organisation;

    @BeforeEach
    void arrive() {
        organisation = organisations.create();
        administrator = organisation.administrator();
    }

    private Answer set(Client who, String days) {
        return who.put(
                SETTINGS,
                "{\"days\":" + days + "}",
                "If-Match",
                administrator.get(SETTINGS).etag());
    }

    private int daysOf(String origin) {
        for (var row : administrator.get(SETTINGS).json().get("origins")) {
            if (row.get("origin").stringValue().equals(origin)) {
                return row.get("days").intValue();
            }
        }
        throw new AssertionError(origin);
    }

    /** 30 days: AZA 2007 (second-hand); 90: Pasmans et al. 2008 (from the abstract of a review). */
    @Test
    void showsThePolicyWithItsSourcesWhereNothingWasSet() {
        Answer settings = organisation.keeper().get(SETTINGS);
        assertThat(settings.json().get("origins")).hasSize(Origin.values().length);
        assertThat(Rescue.each(settings.json().get("published"), "/days")).containsExactly("30", "90");
        assertThat(daysOf("wild")).isEqualTo(90);
        assertThat(settings.etag()).isEqualTo("\"v0\"");
    }

    @Test
    void lengthensForAnimalsPlacedFromThenOn() {
        Client keeper = organisation.keeper();
        String room = keeper.post("/api/v1/rooms", "{\"name\":\"r\"}").id();
        String early =
                keeper.post("/api/v1/animals", "{\"declaredOrigin\":\"W\"}").id();
        String late =
                keeper.post("/api/v1/animals", "{\"declaredOrigin\":\"W\"}").id();
        String body = "{\"roomId\":\"" + room + "\"}";
        keeper.post("/api/v1/animals/" + early + "/placements", body);
        assertThat(set(administrator, "{\"wild\":120}").status()).isEqualTo(200);
        assertThat(daysOf("wild")).isEqualTo(120);
        assertThat(daysOf("seized")).isEqualTo(90);
        String clock = "/api/v1/rooms/" + room + "/clock";
        assertThat(keeper.get(clock).json().get("neededDays").intValue()).isEqualTo(90);
        Answer placed = keeper.post("/api/v1/animals/" + late + "/placements", body);
        assertThat(placed.text("/arrival/minimumStay/reasons/0/source")).isEqualTo("rule of the house");
        assertThat(keeper.get(clock).json().get("neededDays").intValue()).isEqualTo(120);
    }

    @Test
    void refusesFewerDaysThanThePolicyAndSaysWhoDecidesThat() {
        Answer refused = set(administrator, "{\"wild\":60,\"mars\":100,\"farmed\":-1}");
        assertThat(refused.faults()).containsExactlyInAnyOrder("#/days/wild", "#/days/mars", "#/days/farmed");
        assertThat(refused.body()).contains("a vet decides");
        assertThat(administrator.get(SETTINGS).etag()).isEqualTo("\"v0\"");
    }

    @Test
    void isSetByAdministratorsAndVetsAndKeptWithItsHistory() {
        assertThat(set(organisation.keeper(), "{\"wild\":120}").isProblem("forbidden"))
                .isTrue();
        assertThat(set(organisation.clinician(), "{\"wild\":120}").status()).isEqualTo(200);
        assertThat(set(administrator, "{}").etag()).isEqualTo("\"v2\"");
        assertThat(daysOf("wild")).isEqualTo(90);
        assertThat(administrator
                        .put(SETTINGS, "{\"days\":{}}", "If-Match", "\"v1\"")
                        .isProblem("changed-meanwhile"))
                .isTrue();
        Answer changes = administrator.get(SETTINGS + "/changes?limit=1");
        assertThat(changes.json().at("/items/0/days/wild").intValue()).isEqualTo(120);
        assertThat(changes.link("next")).isPresent();
        assertThat(organisations
                        .create()
                        .keeper()
                        .get(SETTINGS + "/changes")
                        .json()
                        .get("items"))
                .isEmpty();
    }
}
