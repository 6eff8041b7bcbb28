package varanid.intake.visit;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The weighings of the plot as Observations of body weight in grams. */
final class FhirWeights {

    private final Map<Summary.WeightPoint, FhirObject> references = new LinkedHashMap<>();

    private FhirWeights() {}

    static FhirWeights write(Summary summary, FhirDocument document) {
        FhirWeights weights = new FhirWeights();
        for (Summary.WeightPoint point : summary.weights()) {
            String key = "weight/" + weights.references.size();
            weights.references.computeIfAbsent(
                    point, each -> document.add(document.id(key), observation(each, document)));
        }
        return weights;
    }

    private static FhirObject observation(Summary.WeightPoint point, FhirDocument document) {
        String note = note(point, document.texts());
        return FhirStatements.observation(
                        Basis.MEASURED,
                        null,
                        document.narrative()
                                .paragraph(
                                        "weight",
                                        point.on() + ": " + point.grams().toPlainString() + " g")
                                .paragraph("note", note),
                        document)
                .withOne(
                        "category",
                        FhirCode.concept(
                                FhirCode.coding(FhirCode.OBSERVATION_CATEGORY, "vital-signs", "Vital Signs"), null))
                .with(
                        "code",
                        FhirCode.concept(FhirCode.coding(FhirCode.LOINC, "29463-7", "Body weight"), "Body weight"))
                .with("effectiveDateTime", point.at())
                .with("valueQuantity", FhirCode.quantity(point.grams(), "g"))
                .withOne("note", FhirObject.of().with("text", FhirText.markdown(note)));
    }

    private static String note(Summary.WeightPoint point, HandOverTexts texts) {
        BigDecimal step = point.stepGrams();
        return (step == null
                        ? texts.page("scale") + ": " + texts.say("not-recorded")
                        : texts.say("step", "step", step.stripTrailingZeros().toPlainString()))
                + "; " + texts.page("compared") + ": "
                + texts.word("compared", point.comparable() ? "yes" : "no");
    }

    /** The weighing that a statement speaks of. */
    Optional<FhirObject> find(Statement statement) {
        Statement.@Nullable Measure measure = statement.measure();
        if (measure == null || !measure.unit().equals("g") || statement.basis() != Basis.MEASURED) {
            return Optional.empty();
        }
        return references.entrySet().stream()
                .filter(entry -> entry.getKey().at().equals(statement.at())
                        && entry.getKey().grams().compareTo(measure.value()) == 0)
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** All, in the order of the plot. */
    List<FhirObject> all() {
        return List.copyOf(references.values());
    }
}
