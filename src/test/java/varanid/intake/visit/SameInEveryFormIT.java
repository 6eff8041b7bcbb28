package varanid.intake.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Composition;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.web.util.HtmlUtils;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The page, the PDF and the FHIR document of one animal, held against its JSON field by field. */
@ServiceTest
class SameInEveryFormIT {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.UK);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

    @Autowired
    Organisations organisations;

    @Autowired
    SummaryReader summaries;

    @Autowired
    SummaryForms forms;

    @Autowired
    JsonMapper json;

    private static Answer created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    /** One with something in nearly every part. */
    private Summary summaryOfAFullLife() {
        Organisations.Organisation rescue = organisations.create(ZoneId.of("Europe/Lisbon"));
        Client keeper = rescue.keeper();
        String animal = created(keeper.post("/api/v1/animals", """
                        {"name": "Reed <7> & Co", "tag": "R-7", "species": {"name": "Varanus salvator"}, "declaredOrigin": "W",
                         "sex": "female", "lifeStage": "juvenile", "notes": "From a van. \\"Do not feed\\", he said.",
                         "weights": [{"value": 240, "unit": "g", "resolution": 1, "scale": "kitchen",
                                      "occurredAt": "2026-01-05T08:00:00Z"}]}""")).id();
        String path = "/api/v1/animals/" + animal;
        created(keeper.post(path + "/weighings", """
                {"value": 212, "unit": "g", "resolution": 1, "scale": "kitchen", "occurredAt": "2026-01-20T08:00:00Z"}"""));
        created(keeper.post(path + "/diary", """
                {"ate": "some", "food": "crickets", "passed": {"stool": "yes"}, "note": "Loose & pale"}"""));
        created(keeper.post(path + "/enclosure-readings", """
                {"temperatures": {"basking-surface": {"value": 46, "unit": "Cel"}, "cool-air": {"value": 26, "unit": "Cel"}},
                 "humidity": {"percent": 60, "at": {"value": 27, "unit": "Cel"}}}"""));
        created(keeper.post(path + "/samples", "{\"kind\":\"stool\",\"freshHours\":1}"));
        created(keeper.post(path + "/reports", """
                {"reportedBy": "previous keeper", "questions": ["May it stay with the others?"]}"""));
        created(keeper.post(path + "/assessments", """
                {"checklist": "varanid-intake", "conditions": ["handled"],
                 "answers": {"laboured-breathing": "mild", "mites": "few", "days-food-refused": 3,
                             "ticks": "none", "mouth-colour": "not-observed"}}"""));
        created(rescue.clinician().post(path + "/vet-decisions", """
                {"seenUpTo": "2026-01-21T08:00:00Z", "sawAnimal": "heard-of", "urgency": "urgent",
                 "instructions": "Keep it warm.\\nWeigh on Mondays.",
                 "writer": {"name": "A vet", "practice": "Millpond", "licenceStatement": "register 1"}}"""));
        return summaries
                .find(rescue.id(), ZoneId.of("Europe/Lisbon"), UUID.fromString(animal))
                .orElseThrow();
    }

    private byte[] write(String form, Summary summary) {
        return forms.find(form).orElseThrow().write(summary, Optional.empty());
    }

    /** What a reader reads, blanks apart: lines break at other places in each form. */
    private static String squeezed(String text) {
        return text.replaceAll("[\\s\\u00A0\\u00AD]+", "");
    }

    private static String ofPage(byte[] page) {
        String html = new String(page, StandardCharsets.UTF_8)
                .replaceAll("(?s)<head>.*?</head>", "")
                .replaceAll("(?s)<title>.*?</title>", "");
        return squeezed(HtmlUtils.htmlUnescape(html.replaceAll("<[^>]*>", " ")));
    }

    private static String ofPdf(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return squeezed(new PDFTextStripper().getText(document));
        }
    }

    private static String ofFhir(byte[] fhir) {
        Bundle bundle = FhirValidator.shared().parse(fhir);
        Composition composition = (Composition) bundle.getEntryFirstRep().getResource();
        StringBuilder text = new StringBuilder(composition.getTitle());
        text.append(composition.getText().getDiv().allText());
        composition.getSection().forEach(section -> {
            text.append(section.getTitle());
            text.append(section.getText().getDiv().allText());
        });
        return squeezed(text.toString());
    }

    private static void add(List<String> all, JsonNode node, String member) {
        if (node.has(member)) {
            all.add(node.get(member).stringValue());
        }
    }

    /** Every text of the JSON that a person reads, in order. */
    private static List<String> texts(JsonNode summary) {
        List<String> all = new ArrayList<>();
        add(all, summary.get("animal"), "title");
        summary.get("alerts").forEach(alert -> add(all, alert, "text"));
        add(all, summary.get("standing"), "headline");
        add(all, summary.get("standing"), "isolationText");
        summary.get("notices").forEach(notice -> all.add(notice.stringValue()));
        summary.get("sections").forEach(section -> {
            add(all, section, "title");
            section.get("statements").forEach(statement -> {
                add(all, statement, "label");
                add(all, statement, "text");
                if (statement.has("on")) {
                    all.add(DAY.format(LocalDate.parse(statement.get("on").stringValue())));
                }
                add(all, statement, "by");
                add(all, statement, "qualifier");
                if (statement.has("at")) {
                    all.add(MOMENT.format(
                            java.time.Instant.parse(statement.get("at").stringValue())
                                    .atZone(ZoneId.of(summary.get("zone").stringValue()))));
                }
            });
        });
        return all;
    }

    private void everyTextIsIn(Summary summary) throws IOException {
        JsonNode data = json.readTree(write("json", summary));
        assertThat(SummarySchema.faults(data.toString())).isEmpty();
        String page = ofPage(write("html", summary));
        String pdf = ofPdf(write("pdf", summary));
        String fhir = ofFhir(write("fhir", summary));
        assertThat(texts(data)).hasSizeGreaterThan(20).allSatisfy(text -> {
            assertThat(page).as("page").contains(squeezed(text));
            assertThat(pdf).as("PDF").contains(squeezed(text));
            assertThat(fhir).as("FHIR").contains(squeezed(text));
        });
        data.get("weights").forEach(weight -> {
            String grams =
                    weight.get("grams").decimalValue().stripTrailingZeros().toPlainString() + "g";
            String on = DAY.format(LocalDate.parse(weight.get("on").stringValue()));
            assertThat(page).contains(squeezed(on + grams));
            assertThat(pdf).contains(squeezed(on + grams));
        });
        assertThat(FhirFormTest.faults(write("fhir", summary))).isEmpty();
    }

    @Test
    void everyFormSaysEverythingThatTheDataSays() throws IOException {
        Summary summary = summaryOfAFullLife();

        everyTextIsIn(summary);
        assertThat(summary.sections().stream().map(Summary.Section::code))
                .contains("vets-answers", "questions", "samples", "surroundings", "recommendation", "history");
        Bundle bundle = FhirValidator.shared().parse(write("fhir", summary));
        assertThat(bundle.getEntry().stream()
                        .map(entry -> entry.getResource().fhirType())
                        .distinct())
                .contains(
                        "Composition",
                        "Patient",
                        "Questionnaire",
                        "QuestionnaireResponse",
                        "Observation",
                        "RiskAssessment");
    }

    @Test
    void everyFormSaysItWhereNearlyNothingIsKnown() throws IOException {
        Organisations.Organisation rescue = organisations.create();
        String animal = created(rescue.keeper().post("/api/v1/animals", "{}")).id();

        everyTextIsIn(summaries
                .find(rescue.id(), ZoneId.of("UTC"), UUID.fromString(animal))
                .orElseThrow());
    }
}
