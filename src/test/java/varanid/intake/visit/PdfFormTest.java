package varanid.intake.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import varanid.intake.platform.web.PdfUa;

/** The PDF, read by others than those who wrote it. */
class PdfFormTest {

    @ParameterizedTest
    @MethodSource("varanid.intake.visit.SummaryFixtures#all")
    void keepsToPdfUa1(Summary summary) {
        assertThat(PdfUa.faults(Pages.pdf(summary, Optional.of(Pages.LINK)))).isEmpty();
        Pages.html(summary, Optional.of(Pages.LINK));
    }
}
