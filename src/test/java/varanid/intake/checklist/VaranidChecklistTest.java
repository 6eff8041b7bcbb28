package varanid.intake.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import varanid.intake.scoring.Checklist;

class VaranidChecklistTest {

    @Test
    void theShippedChecklistIsAccepted() throws IOException {
        try (var in =
                Objects.requireNonNull(getClass().getResourceAsStream("/shared/checklists/varanid-intake.v1.yaml"))) {
            Checklist checklist = new ChecklistReader().read("varanid-intake.v1", in.readAllBytes());
            assertThat(checklist.draft().findings()).hasSizeGreaterThan(60);
        }
    }
}
