package varanid.intake.visit;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The part of a resource that people read: XHTML of the few elements that FHIR allows. */
final class FhirNarrative {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private final ZoneId zone;
    private final StringBuilder body = new StringBuilder();

    FhirNarrative(ZoneId zone) {
        this.zone = zone;
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
        body.append("<table><thead><tr><th>How it is known</th><th>What</th><th>What is said of it</th><th>When</th>"
                + "<th>By whom</th><th>To be known with it</th></tr></thead><tbody>");
        statements.forEach(this::row);
        body.append("</tbody></table>");
        return this;
    }

    private void row(Statement statement) {
        body.append("<tr class=\"statement ").append(statement.basis().code()).append("\">");
        cell("basis", statement.basis().code());
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
            return MINUTE.format(statement.at().atZone(zone));
        }
        return statement.on() == null ? null : statement.on().toString();
    }

    String div() {
        return "<div xmlns=\"http://www.w3.org/1999/xhtml\">" + body + "</div>";
    }
}
