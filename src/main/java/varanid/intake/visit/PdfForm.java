package varanid.intake.visit;

import java.io.IOException;
import java.net.URI;
import java.util.Optional;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import varanid.intake.platform.web.PdfWriter;

/** The page as a tagged PDF. */
@Component
@Order(2)
class PdfForm implements SummaryForm {

    private final SummaryPage page;
    private final PdfWriter pdf;

    PdfForm(SummaryPage page, PdfWriter pdf) {
        this.page = page;
        this.pdf = pdf;
    }

    @Override
    public MediaType type() {
        return MediaType.APPLICATION_PDF;
    }

    @Override
    public byte[] write(Summary summary, Optional<URI> link) {
        try {
            return pdf.write(page.write(summary, link, true), "/paper/summary-print.css");
        } catch (IOException e) {
            throw new IllegalStateException("the summary could not be written as PDF", e);
        }
    }
}
