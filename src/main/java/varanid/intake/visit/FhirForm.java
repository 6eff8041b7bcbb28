package varanid.intake.visit;

import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.checklist.Catalogue;

/**
 * A summary as a FHIR R4 document, for the programs of a clinic: docs/fhir.md says what stands where.
 *
 * <p>The narrative of the document says everything that the summary says, in its order. The coded resources say once more
 * what a program can use: the animal, the look with its checklist, numbers with their units, findings, the computed
 * recommendation, what a vet said. Whatever they hold stands in the narrative too.
 */
@Component
@Order(3)
final class FhirForm implements SummaryForm {

    static final MediaType TYPE = MediaType.parseMediaType("application/fhir+json");

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private static final String NAME = "Varanid Intake";
    private static final int ISO_DIGITS = 15;
    private static final Pattern SCIENTIFIC = Pattern.compile("[A-Z][a-z]+( [a-z][a-z-]+){1,2}");

    private final Catalogue catalogue;
    private final HandOverTexts texts;

    FhirForm(Catalogue catalogue, HandOverTexts texts) {
        this.catalogue = catalogue;
        this.texts = texts;
    }

    @Override
    public MediaType type() {
        return TYPE;
    }

    @Override
    public byte[] write(Summary summary, Optional<URI> link) {
        FhirDocument document = new FhirDocument(summary, texts);
        document.add(summary.animal().id(), patient(summary.animal(), document));
        document.add(document.authorId(), author(document));
        List<FhirObject> sections = new ArrayList<>();
        sections.add(standing(summary, document));
        sections.addAll(parts(summary, document));

        UUID id = document.id("document/" + summary.madeAt());
        List<FhirObject> links = link.map(
                        where -> FhirObject.of().with("relation", "alternate").with("url", where.toString()))
                .map(List::of)
                .orElse(List.of());
        return MAPPER.writeValueAsBytes(
                document.bundle(id, summary.madeAt(), links, composition(summary, id, document, sections)));
    }

    private FhirObject composition(Summary summary, UUID id, FhirDocument document, List<FhirObject> sections) {
        String about = texts.page("summary-of");
        String made = texts.say(
                "made",
                "when",
                String.valueOf(document.when(summary.madeAt())),
                "zone",
                summary.zone().getId());
        return FhirObject.resource("Composition")
                .withNarrative(
                        document.narrative()
                                .paragraph("title", summary.animal().title())
                                .paragraph("about", about)
                                .paragraph("made", made),
                        true)
                .with("identifier", FhirCode.uuid(id.toString()))
                .with("status", "final")
                .with("type", FhirCode.concept(FhirCode.coding(FhirCode.LOINC, "57133-1", "Referral note"), about))
                .with("subject", document.patient())
                .with("date", summary.madeAt())
                .withOne("author", document.author())
                .with("title", about + ": " + summary.animal().title())
                .with("section", sections);
    }

    /** Every part of the summary; and what a summary says of itself, with what belongs to a part that says nothing. */
    private List<FhirObject> parts(Summary summary, FhirDocument document) {
        FhirLook look = FhirLook.write(summary, catalogue, document);
        FhirWeights weights = FhirWeights.write(summary, document);
        FhirStatements statements = new FhirStatements(summary, document, look, weights);
        Map<String, List<FhirObject>> belonging = new LinkedHashMap<>();
        belonging.put(Part.FINDINGS.code(), look.ofFindings());
        belonging.put(Part.RECOMMENDATION.code(), look.ofRecommendation());
        belonging.put(Part.WEIGHT.code(), weights.all());
        List<FhirObject> sections = new ArrayList<>();
        for (Summary.Section section : summary.sections()) {
            List<FhirObject> entries = new ArrayList<>(statements.write(section, sections.size()));
            Optional.ofNullable(belonging.remove(section.code())).orElse(List.of()).stream()
                    .filter(each -> !entries.contains(each))
                    .forEach(entries::add);
            sections.add(section(
                    section.code(), section.title(), document.narrative().statements(section.statements()), entries));
        }
        FhirNarrative notices = document.narrative();
        summary.notices().forEach(notice -> notices.paragraph("notice", notice));
        sections.add(section(
                "notices",
                texts.page("of-itself"),
                notices,
                belonging.values().stream().flatMap(List::stream).toList()));
        return sections;
    }

    private static FhirObject section(String code, String title, FhirNarrative narrative, List<FhirObject> entries) {
        return FhirObject.of()
                .with("title", title)
                .with("code", FhirCode.concept(FhirCode.coding(FhirCode.PART, code, null), null))
                .withNarrative(narrative, true)
                .with("entry", entries);
    }

    /** What heads every page, and how soon and how apart. */
    private FhirObject standing(Summary summary, FhirDocument document) {
        Summary.Standing standing = summary.standing();
        FhirNarrative narrative = document.narrative();
        List<FhirObject> entries = new ArrayList<>();
        for (Summary.Alert alert : summary.alerts()) {
            narrative.paragraph("alert", alert.text());
            entries.add(document.add(document.id("alert/" + entries.size()), flag(alert, document)));
        }
        String urgency = standing.urgency();
        FhirObject soon = standing("urgency", "how-soon", summary, standing.headline(), document);
        String isolation = standing.isolationText();
        narrative
                .paragraph("headline", standing.headline())
                .paragraph("from", texts.word("from", standing.from().code()))
                .paragraph("isolation", isolation);
        entries.add(document.add(
                document.id("standing/urgency"),
                urgency == null
                        ? soon.with(
                                "dataAbsentReason",
                                FhirCode.concept(
                                        FhirCode.coding(FhirCode.ABSENT, "unknown", null), standing.headline()))
                        : soon.with(
                                "valueCodeableConcept",
                                FhirCode.concept(
                                        FhirCode.coding(FhirCode.URGENCY, urgency, null), standing.headline()))));
        entries.add(document.add(
                document.id("standing/isolation"),
                standing("isolation", "how-apart", summary, isolation, document)
                        .with(
                                "valueCodeableConcept",
                                FhirCode.concept(
                                        FhirCode.coding(FhirCode.ISOLATION, standing.isolation(), null), isolation))));
        return section("standing", texts.page("how-soon-and-apart"), narrative, entries);
    }

    private FhirObject standing(String which, String word, Summary summary, String text, FhirDocument document) {
        Basis from = summary.standing().from();
        FhirNarrative narrative =
                document.narrative().paragraph(which, text).paragraph("from", texts.word("from", from.code()));
        return FhirStatements.observation(from, null, narrative, document)
                .with(
                        "code",
                        FhirCode.concept(
                                FhirCode.coding(FhirCode.STATEMENT, "standing-" + which, null), texts.page(word)))
                .with("effectiveDateTime", summary.madeAt());
    }

    private static FhirObject flag(Summary.Alert alert, FhirDocument document) {
        return FhirObject.resource("Flag")
                .withNarrative(document.narrative().paragraph("alert", alert.text()))
                .with("status", "active")
                .with("code", FhirCode.concept(FhirCode.coding(FhirCode.ALERT, alert.code(), null), alert.text()))
                .with("subject", document.patient())
                .with("author", document.author());
    }

    private FhirObject author(FhirDocument document) {
        return FhirObject.resource("Device")
                .withNarrative(document.narrative().paragraph("name", NAME))
                .withOne("deviceName", FhirObject.of().with("name", NAME).with("type", "model-name"));
    }

    private FhirObject patient(Summary.Subject animal, FhirDocument document) {
        return FhirObject.resource("Patient")
                .withNarrative(document.narrative()
                        .paragraph("title", animal.title())
                        .paragraph("tag", animal.tag())
                        .paragraph("species", animal.species())
                        .paragraph("life-stage", animal.lifeStage())
                        .paragraph("sex", animal.sex())
                        .paragraph("transponder", animal.transponder()))
                .withOne(
                        "extension",
                        FhirObject.of()
                                .with("url", FhirCode.ANIMAL_EXTENSION)
                                .withOne(
                                        "extension",
                                        FhirObject.of()
                                                .with("url", "species")
                                                .with("valueCodeableConcept", species(animal))))
                .with("identifier", identifiers(animal))
                .withOne("name", isName(animal) ? FhirObject.of().with("text", animal.title()) : null)
                .with("gender", gender(animal.sex()));
    }

    private static List<FhirObject> identifiers(Summary.Subject animal) {
        boolean iso = animal.transponder() != null && animal.transponder().length() == ISO_DIGITS;
        return Stream.of(
                        FhirObject.of().with("system", FhirCode.TAG).with("value", animal.tag()),
                        FhirObject.of()
                                .with("system", iso ? FhirCode.TRANSPONDER : FhirCode.TRANSPONDER_OF_NO_STANDARD)
                                .with("value", animal.transponder()))
                .filter(identifier -> identifier.has("value"))
                .toList();
    }

    /** A title that only says the tag again, or that there is no name, is none. */
    private boolean isName(Summary.Subject animal) {
        return !animal.title().equals(animal.tag()) && !animal.title().equals(texts.say("untitled"));
    }

    /** The extension that says "this is an animal" wants a species: where nobody knows it, it says so in words. */
    private FhirObject species(Summary.Subject animal) {
        String species = animal.species() == null ? "" : FhirText.string(animal.species());
        return species.isEmpty()
                ? FhirCode.concept(null, texts.say("monitor-of-unknown-species"))
                : FhirCode.concept(
                        SCIENTIFIC.matcher(species).matches() ? FhirCode.coding(FhirCode.SPECIES, species, null) : null,
                        species);
    }

    private String gender(String sex) {
        return Stream.of("female", "male")
                .filter(code -> sex.equals(texts.word("sex", code)))
                .findFirst()
                .orElse("unknown");
    }
}
