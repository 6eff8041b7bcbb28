package varanid.intake.visit;

import java.net.URI;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;
import varanid.intake.platform.time.ReaderDates;

/** Writes a summary into its template: well-formed XML, so that the same serves a browser and the PDF. */
@Component
class SummaryPage {

    private final ITemplateEngine templates;
    private final HandOverTexts texts;

    SummaryPage(ITemplateEngine templates, HandOverTexts texts) {
        this.templates = templates;
        this.texts = texts;
    }

    /** @param paper whether it is for the PDF, which brings its own style */
    String write(Summary summary, Optional<URI> link, boolean paper) {
        return templates.process(
                "summary",
                new Context(
                        Locale.ENGLISH,
                        Map.of(
                                "it",
                                PageView.of(summary, link, texts, WeightPlot.PAPER, ReaderDates.PAPER),
                                "paper",
                                paper)));
    }
}
