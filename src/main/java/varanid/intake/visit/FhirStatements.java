package varanid.intake.visit;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Statements as resources, where a program can use them: what was found and what was measured as Observations, what a vet
 * answered as Communications. All others are in the narrative alone.
 */
final class FhirStatements {

    private final Summary summary;
    private final FhirDocument document;
    private final FhirLook look;
    private final FhirWeights weights;

    FhirStatements(Summary summary, FhirDocument document, FhirLook look, FhirWeights weights) {
        this.summary = summary;
        this.document = document;
        this.look = look;
        this.weights = weights;
    }

    /**
     * What refers to the resources of one section, in the order of its statements.
     *
     * @param number of the section, which keeps the ids of its resources apart from those of others
     */
    List<FhirObject> write(Summary.Section section, int number) {
        List<FhirObject> entries = new ArrayList<>();
        int place = 0;
        for (Statement statement : section.statements()) {
            String key = "statement/" + number + "/" + place++;
            write(statement, key).filter(each -> !entries.contains(each)).ifPresent(entries::add);
        }
        if (section.code().equals(Part.VETS_ANSWERS.code())) {
            entries.addAll(answers(section));
        }
        return entries;
    }

    private Optional<FhirObject> write(Statement statement, String key) {
        Optional<FhirObject> weighing = weights.find(statement);
        if (weighing.isPresent()) {
            return weighing;
        }
        Statement.@Nullable Coding coding = statement.coding();
        boolean finding = coding != null
                && coding.system().equals(LookShown.FINDING)
                && (statement.basis() == Basis.OBSERVED || statement.basis() == Basis.MEASURED);
        if (!finding && statement.measure() == null) {
            return Optional.empty();
        }
        return Optional.of(document.add(document.id(key), observation(statement, finding ? coding : null)));
    }

    private FhirObject observation(Statement statement, Statement.@Nullable Coding finding) {
        FhirObject observation = observation(
                        statement.basis(),
                        statement.by(),
                        document.narrative().statements(List.of(statement)),
                        document)
                .withOne(
                        "category",
                        finding == null
                                ? null
                                : FhirCode.concept(
                                        FhirCode.coding(FhirCode.OBSERVATION_CATEGORY, "exam", "Exam"), null))
                .with(
                        "code",
                        FhirCode.concept(
                                finding == null
                                        ? FhirCode.coding(FhirCode.STATEMENT, statement.code(), null)
                                        : FhirCode.coding(FhirCode.FINDING, finding.code(), null),
                                statement.label()))
                .with("effectiveDateTime", effective(statement))
                .withOne(
                        "performer",
                        statement.by() == null ? null : FhirObject.of().with("display", statement.by()));
        Statement.@Nullable Measure measure = statement.measure();
        if (measure != null) {
            observation.with("valueQuantity", FhirCode.quantity(measure.value(), measure.unit()));
        } else if (finding != null) {
            look.value(observation, finding, statement.text());
        }
        String qualifier = statement.qualifier();
        if (qualifier != null) {
            observation.withOne("note", FhirObject.of().with("text", FhirText.markdown(qualifier)));
        }
        return finding == null ? observation : observation.withOne("derivedFrom", look.response());
    }

    /**
     * An Observation that says how it is known, of whom and by whom, and nothing else yet. Where nobody is known to have
     * done it, that is said; what this service works out names the service as the device.
     */
    static FhirObject observation(Basis basis, @Nullable String by, FhirNarrative narrative, FhirDocument document) {
        boolean computed = basis == Basis.COMPUTED;
        FhirObject somebody = FhirObject.of().with("display", by);
        FhirObject nobody = FhirObject.of()
                .withOne(
                        "extension",
                        FhirObject.of()
                                .with("url", FhirCode.ABSENT_EXTENSION)
                                .with("valueCode", computed ? "not-applicable" : "unknown"))
                .with("display", document.texts().say("not-recorded"));
        return FhirObject.resource("Observation")
                .with("meta", FhirCode.meta(basis))
                .withNarrative(narrative)
                .with("status", "final")
                .with("subject", document.patient())
                .withOne("performer", somebody.isEmpty() ? nobody : somebody)
                .with("method", FhirCode.concept(null, document.texts().word("tag", basis.code())))
                .with("device", computed ? document.author() : null);
    }

    private static @Nullable String effective(Statement statement) {
        Instant at = statement.at();
        LocalDate on = statement.on();
        return at != null ? at.toString() : on == null ? null : on.toString();
    }

    /** One for each time that a vet said something: the words as they are, and nothing concluded from them. */
    private List<FhirObject> answers(Summary.Section section) {
        Map<String, List<Statement>> byOccasion = new LinkedHashMap<>();
        for (Statement statement : section.statements()) {
            if (statement.basis() == Basis.VET) {
                byOccasion
                        .computeIfAbsent(effective(statement) + "\n" + statement.by(), occasion -> new ArrayList<>())
                        .add(statement);
            }
        }
        List<FhirObject> entries = new ArrayList<>();
        for (List<Statement> said : byOccasion.values()) {
            Statement first = said.get(0);
            boolean carries = entries.isEmpty() && summary.standing().from() == Basis.VET;
            entries.add(document.add(
                    document.id("answer/" + entries.size()),
                    FhirObject.resource("Communication")
                            .with("meta", FhirCode.meta(Basis.VET))
                            .withNarrative(document.narrative().statements(said))
                            .with("status", "completed")
                            .with("priority", carries ? summary.standing().urgency() : null)
                            .with("subject", document.patient())
                            .with("sent", first.at())
                            .with("sender", sender(first))
                            .with(
                                    "payload",
                                    said.stream().map(FhirStatements::payload).toList())));
        }
        return entries;
    }

    private static @Nullable FhirObject sender(Statement statement) {
        return statement.by() == null ? null : FhirObject.of().with("display", statement.by());
    }

    private static FhirObject payload(Statement statement) {
        return FhirObject.of().with("contentString", statement.label() + ": " + statement.text());
    }
}
