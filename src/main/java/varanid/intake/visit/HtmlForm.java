package varanid.intake.visit;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** The summary as a page that prints well. */
@Component
@Order(1)
class HtmlForm implements SummaryForm {

    private static final MediaType HTML = new MediaType("text", "html", StandardCharsets.UTF_8);

    private final SummaryPage page;

    HtmlForm(SummaryPage page) {
        this.page = page;
    }

    @Override
    public MediaType type() {
        return HTML;
    }

    @Override
    public byte[] write(Summary summary, Optional<URI> link) {
        return page.write(summary, link, false).getBytes(StandardCharsets.UTF_8);
    }
}
