package varanid.intake.visit;

import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.ReaderDates;

/** The part of a resource that people read: XHTML of the few elements that FHIR allows. */
final class FhirNarrative {

    private static final List<String> COLUMNS = List.of("known", "what", "said", "when", "by-whom", "to-know");

    /** In which moments are shown. */
    private final ZoneId zone;

    private final HandOverTexts texts;
    private final StringBuilder body = new StringBuilder();

    FhirNarrative(ZoneId zone, HandOverTexts texts) {
        this.zone = zone;
        this.texts = texts;
    }

    /**
     * A paragraph.
     *
     * @param kind its class, of lower-case letters and hyphens
     */
    FhirNarrative paragraph(String kind, @Nullable String text) {
        String clean = text == null ? "" : FhirText.xhtml(text);
        if (!clean.isEmpty()) {
            body.append("<p class=\"").append(kind).append("\">").append(clean).append("</p>");
        }
        return this;
    }

    /** A table with a row for each statement, which begins with the word for how it is known. */
    FhirNarrative statements(List<Statement> statements) {
        body.append("<table><thead><tr>");
        COLUMNS.forEach(column ->
                body.append("<th>").append(FhirText.xhtml(texts.page(column))).append("</th>"));
        body.append("</tr></thead><tbody>");
        statements.forEach(this::row);
        body.append("</tbody></table>");
        return this;
    }

    private void row(Statement statement) {
        body.append("<tr class=\"statement ").append(statement.basis().code()).append("\">");
        cell("basis", texts.word("tag", statement.basis().code()));
        cell("label", statement.label());
        cell("text", statement.text());
        cell("when", when(statement));
        cell("by", statement.by());
        cell("qualifier", statement.qualifier());
        body.append("</tr>");
    }

    private void cell(String kind, @Nullable String text) {
        body.append("<td class=\"").append(kind).append("\">");
        if (text != null) {
            body.append(FhirText.xhtml(text));
        }
        body.append("</td>");
    }

    private @Nullable String when(Statement statement) {
        if (statement.at() != null) {
            return ReaderDates.PAPER.shortMoment(statement.at(), zone);
        }
        return statement.on() == null ? null : ReaderDates.PAPER.shortDay(statement.on());
    }

    String div() {
        return "<div xmlns=\"http://www.w3.org/1999/xhtml\">" + body + "</div>";
    }
}
