package varanid.intake.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FhirFormTest {

    @Test
    void tries() {
        FhirForm form = new FhirForm(FhirValidator.catalogue(), new HandOverTexts());
        for (Summary summary : SummaryFixtures.all()) {
            byte[] document = form.write(summary, Optional.empty());
            List<String> complaints = FhirValidator.shared().complaints(document);
            System.out.println("=== " + summary.animal().title());
            complaints.forEach(System.out::println);
        }
        assertThat(true).isTrue();
    }
}
