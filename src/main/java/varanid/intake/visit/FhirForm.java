package varanid.intake.visit;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
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
final class FhirForm implements SummaryForm {

    static final MediaType TYPE = MediaType.parseMediaType("application/fhir+json");

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private static final String ABOUT = "What a vet should know before the visit";

    private final Catalogue catalogue;

    FhirForm(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    @Override
    public MediaType type() {
        return TYPE;
    }

    @Override
    public byte[] write(Summary summary, Optional<URI> link) {
        FhirDocument document = new FhirDocument(summary.animal().id());
        document.add(summary.animal().id(), patient(summary));
        FhirObject author = document.add(document.id("author"), author());
        List<FhirObject> sections = new ArrayList<>();
        sections.add(standing(summary, document));

        FhirLook look = FhirLook.write(summary, catalogue, document);
        FhirWeights weights = FhirWeights.write(summary, document);
        FhirStatements statements = new FhirStatements(summary, document, look, weights);
        List<FhirObject> unplaced = new ArrayList<>();
        Set<String> codes = Set.copyOf(
                summary.sections().stream().map(Summary.Section::code).toList());
        for (Summary.Section section : summary.sections()) {
            List<FhirObject> entries = new ArrayList<>(statements.write(section));
            if (section.code().equals(Part.FINDINGS.code())) {
                entries.addAll(look.ofFindings());
            }
            if (section.code().equals(Part.RECOMMENDATION.code())) {
                entries.addAll(look.ofRecommendation());
            }
            if (section.code().equals(Part.WEIGHT.code())) {
                entries.addAll(weights.notMentioned());
            }
            sections.add(section(
                    section.code(),
                    section.title(),
                    new FhirNarrative(summary.zone()).statements(section.statements()),
                    entries));
        }
        if (!codes.contains(Part.FINDINGS.code())) {
            unplaced.addAll(look.ofFindings());
        }
        if (!codes.contains(Part.RECOMMENDATION.code())) {
            unplaced.addAll(look.ofRecommendation());
        }
        if (!codes.contains(Part.WEIGHT.code())) {
            unplaced.addAll(weights.notMentioned());
        }
        sections.add(notices(summary, unplaced));

        UUID id = document.id("document/" + summary.madeAt());
        return MAPPER.writeValueAsBytes(document.bundle(
                id,
                summary.madeAt(),
                link.map(where -> List.of(
                                FhirObject.of().with("relation", "alternate").with("url", where.toString())))
                        .orElse(List.of()),
                composition(summary, id, document, author, sections)));
    }

    private static FhirObject composition(
            Summary summary, UUID id, FhirDocument document, FhirObject author, List<FhirObject> sections) {
        return FhirObject.resource("Composition")
                .withNarrative(new FhirNarrative(summary.zone())
                        .paragraph("title", summary.animal().title())
                        .paragraph("about", ABOUT)
                        .paragraph("as-of", "As of " + summary.asOf() + ", times in " + summary.zone()))
                .with("identifier", FhirCode.uuid(id.toString()))
                .with("status", "final")
                .with("type", FhirCode.concept(FhirCode.coding(FhirCode.LOINC, "57133-1", "Referral note"), ABOUT))
                .with("subject", document.patient())
                .with("date", summary.madeAt())
                .withOne("author", author)
                .with("title", ABOUT + ": " + summary.animal().title())
                .with("section", sections);
    }

    private static FhirObject section(String code, String title, FhirNarrative narrative, List<FhirObject> entries) {
        return FhirObject.of()
                .with("title", title)
                .with("code", FhirCode.concept(FhirCode.coding(FhirCode.PART, code, null), null))
                .withNarrative(narrative)
                .with("entry", entries);
    }

    /** What heads every page, and how soon and how apart. */
    private static FhirObject standing(Summary summary, FhirDocument document) {
        Summary.Standing standing = summary.standing();
        FhirNarrative narrative = new FhirNarrative(summary.zone());
        List<FhirObject> entries = new ArrayList<>();
        for (Summary.Alert alert : summary.alerts()) {
            narrative.paragraph("alert", alert.text());
            entries.add(document.add(
                    document.id("alert/" + entries.size()),
                    FhirObject.resource("Flag")
                            .with("status", "active")
                            .with(
                                    "code",
                                    FhirCode.concept(FhirCode.coding(FhirCode.ALERT, alert.code(), null), alert.text()))
                            .with("subject", document.patient())));
        }
        narrative
                .paragraph("headline " + standing.from().code(), standing.headline())
                .paragraph("from", standing.from().code())
                .paragraph("isolation", standing.isolationText());
        FhirObject urgency = FhirStatements.observation(standing.from(), document)
                .with(
                        "code",
                        FhirCode.concept(
                                FhirCode.coding(FhirCode.STATEMENT, "standing-urgency", null), "How soon a vet"))
                .with("effectiveDateTime", summary.madeAt());
        entries.add(document.add(
                document.id("standing/urgency"),
                standing.urgency() == null
                        ? urgency.with(
                                "dataAbsentReason",
                                FhirCode.concept(
                                        FhirCode.coding(FhirCode.ABSENT, "unknown", null), standing.headline()))
                        : urgency.with(
                                "valueCodeableConcept",
                                FhirCode.concept(
                                        FhirCode.coding(FhirCode.URGENCY, standing.urgency(), null),
                                        standing.headline()))));
        entries.add(document.add(
                document.id("standing/isolation"),
                FhirStatements.observation(standing.from(), document)
                        .with(
                                "code",
                                FhirCode.concept(
                                        FhirCode.coding(FhirCode.STATEMENT, "standing-isolation", null),
                                        "How strictly apart"))
                        .with("effectiveDateTime", summary.madeAt())
                        .with(
                                "valueCodeableConcept",
                                FhirCode.concept(
                                        FhirCode.coding(FhirCode.ISOLATION, standing.isolation(), null),
                                        standing.isolationText()))));
        return section("standing", "How soon and how apart", narrative, entries);
    }

    private static FhirObject notices(Summary summary, List<FhirObject> unplaced) {
        FhirNarrative narrative = new FhirNarrative(summary.zone());
        summary.notices().forEach(notice -> narrative.paragraph("notice", notice));
        return section("notices", "What this summary says of itself", narrative, unplaced);
    }

    private static FhirObject author() {
        return FhirObject.resource("Device")
                .withOne(
                        "deviceName",
                        FhirObject.of().with("name", "Varanid Intake").with("type", "model-name"))
                .with("type", FhirCode.concept(null, "Service that keeps records of newly taken-in monitor lizards"));
    }

    private static FhirObject patient(Summary summary) {
        Summary.Subject animal = summary.animal();
        List<FhirObject> identifiers = new ArrayList<>();
        identifiers.add(FhirObject.of().with("system", FhirCode.TAG).with("value", animal.tag()));
        String transponder = animal.transponder();
        if (transponder != null) {
            boolean iso = transponder.length() == 15;
            identifiers.add(FhirObject.of()
                    .with(
                            "type",
                            FhirCode.concept(null, iso ? "Transponder" : "Transponder, not of ISO 11784, unverified"))
                    .with("system", iso ? FhirCode.TRANSPONDER : null)
                    .with("value", transponder));
        }
        return FhirObject.resource("Patient")
                .withNarrative(new FhirNarrative(summary.zone())
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
                .with(
                        "identifier",
                        identifiers.stream().filter(each -> each.has("value")).toList())
                .withOne("name", FhirObject.of().with("text", animal.title()))
                .with("gender", gender(animal.sex()));
    }

    /** The extension that says "this is an animal" wants a species: where nobody knows it, it says so in words. */
    private static FhirObject species(Summary.Subject animal) {
        String species = animal.species();
        if (species == null || FhirText.string(species).isEmpty()) {
            return FhirCode.concept(null, "A monitor lizard; the species is not known");
        }
        boolean scientific = species.matches("[A-Z][a-z]+( [a-z][a-z-]+){1,2}");
        return FhirCode.concept(scientific ? FhirCode.coding(FhirCode.SPECIES, species, null) : null, species);
    }

    private static String gender(String sex) {
        String word = sex.toLowerCase(Locale.ROOT);
        return Set.of("female", "male").contains(word) ? word : "unknown";
    }
}
