package varanid.intake.vet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What a clinician answers with an account, and what then holds. */
@ServiceTest
class VetDecisionIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Clinic clinic;

    @BeforeEach
    void someAnimal() {
        clinic = new Clinic(organisations);
    }

    @Test
    void standsAboveWhatIsWorkedOutFromWhatTheVetHadSeen() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("asap");
        assertThat(clinic.recommendation().text("/urgency/by")).isEqualTo("computed");
        clinic.answers(clock.instant(), "\"urgency\":\"routine\",\"isolation\":\"standard\"");
        Answer holds = clinic.recommendation();
        assertThat(holds.text("/urgency/code")).isEqualTo("routine");
        assertThat(holds.text("/urgency/by")).isEqualTo("vet");
        assertThat(holds.text("/isolation/code")).isEqualTo("standard");
        assertThat(holds.text("/computed/urgency")).isEqualTo("asap");
        assertThat(holds.text("/headline")).startsWith("Routine check, says Ines Okafor (Harbour Reptile Practice), ");
        assertThat(holds.json().get("callVet").booleanValue()).isFalse();
    }

    @Test
    void whatIsNewSinceThenHeadsEveryPage() {
        clinic.look("{\"laboured-breathing\":\"absent\"}");
        Instant seen = clock.instant();
        clinic.answers(seen, "\"urgency\":\"routine\"");
        clock.later(Duration.ofHours(1), () -> clinic.look("{\"laboured-breathing\":\"mild\"}"));
        Answer holds = clinic.recommendation();
        assertThat(holds.text("/urgency/code")).isEqualTo("asap");
        assertThat(holds.json().get("callVet").booleanValue()).isTrue();
        assertThat(holds.text("/alert"))
                .isEqualTo("New since the vet's answer: call. Sides move more than they should but the neck stays"
                        + " still");
    }
}
