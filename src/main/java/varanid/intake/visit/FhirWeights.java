package varanid.intake.visit;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The weighings of the plot as Observations of body weight in grams. */
final class FhirWeights {

    private final Map<Summary.WeightPoint, FhirObject> references = new LinkedHashMap<>();
    private final Set<Summary.WeightPoint> mentioned = new LinkedHashSet<>();

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
        return FhirObject.resource("Observation")
                .with("meta", FhirCode.meta(Basis.MEASURED))
                .with("status", "final")
                .withOne(
                        "category",
                        FhirCode.concept(
                                FhirCode.coding(FhirCode.OBSERVATION_CATEGORY, "vital-signs", "Vital Signs"), null))
                .with(
                        "code",
                        FhirCode.concept(FhirCode.coding(FhirCode.LOINC, "29463-7", "Body weight"), "Body weight"))
                .with("subject", document.patient())
                .with("effectiveDateTime", point.at())
                .with("valueQuantity", FhirCode.quantity(point.grams(), "g"))
                .withOne("note", FhirObject.of().with("text", note(point)))
                .with("method", FhirStatements.method(Basis.MEASURED));
    }

    private static String note(Summary.WeightPoint point) {
        BigDecimal step = point.stepGrams();
        String scale = step == null
                ? "How finely the scale reads is not known."
                : "The scale reads in steps of " + step.toPlainString() + " g.";
        return point.comparable() ? scale : scale + " Wet or freshly fed: the trend does not compare with it.";
    }

    /** The weighing that a statement speaks of. */
    Optional<FhirObject> find(Statement statement) {
        Statement.@Nullable Measure measure = statement.measure();
        if (measure == null || !measure.unit().equals("g") || statement.basis() != Basis.MEASURED) {
            return Optional.empty();
        }
        Optional<Summary.WeightPoint> found = references.keySet().stream()
                .filter(point ->
                        point.at().equals(statement.at()) && point.grams().compareTo(measure.value()) == 0)
                .findFirst();
        found.ifPresent(mentioned::add);
        return found.map(references::get);
    }

    /** Those that no statement so far spoke of. */
    List<FhirObject> notMentioned() {
        return references.entrySet().stream()
                .filter(entry -> !mentioned.contains(entry.getKey()))
                .map(Map.Entry::getValue)
                .toList();
    }
}
