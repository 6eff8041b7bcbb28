package varanid.intake.visit;

import com.fasterxml.jackson.annotation.JsonValue;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A JSON object as FHIR R4 wants it: members in the order they were given, and nothing that is empty, because FHIR knows
 * no null, no empty string, no empty list and no empty object.
 *
 * <p>Every text that goes in is made fit for FHIR ({@link FhirText#string}).
 */
final class FhirObject {

    private final Map<String, Object> members = new LinkedHashMap<>();

    static FhirObject of() {
        return new FhirObject();
    }

    static FhirObject resource(String type) {
        return new FhirObject().with("resourceType", type);
    }

    FhirObject with(String name, @Nullable String text) {
        String clean = text == null ? "" : FhirText.string(text);
        if (!clean.isEmpty()) {
            members.put(name, clean);
        }
        return this;
    }

    FhirObject with(String name, @Nullable BigDecimal number) {
        if (number != null) {
            members.put(name, number);
        }
        return this;
    }

    FhirObject with(String name, @Nullable Instant moment) {
        return with(name, moment == null ? null : moment.toString());
    }

    FhirObject with(String name, @Nullable LocalDate day) {
        return with(name, day == null ? null : day.toString());
    }

    FhirObject with(String name, boolean flag) {
        members.put(name, flag);
        return this;
    }

    FhirObject with(String name, @Nullable FhirObject object) {
        if (object != null && !object.isEmpty()) {
            members.put(name, object);
        }
        return this;
    }

    FhirObject with(String name, List<FhirObject> objects) {
        List<FhirObject> filled =
                objects.stream().filter(object -> !object.isEmpty()).toList();
        if (!filled.isEmpty()) {
            members.put(name, filled);
        }
        return this;
    }

    /** A list of one. */
    FhirObject withOne(String name, @Nullable FhirObject object) {
        return object == null ? this : with(name, List.of(object));
    }

    FhirObject withTexts(String name, List<String> texts) {
        List<String> filled = texts.stream()
                .map(FhirText::string)
                .filter(text -> !text.isEmpty())
                .toList();
        if (!filled.isEmpty()) {
            members.put(name, filled);
        }
        return this;
    }

    /**
     * What people read of it.
     *
     * @param narrative taken as it is, since it is well formed
     * @param more whether it says more than the coded members do
     */
    FhirObject withNarrative(FhirNarrative narrative, boolean more) {
        Map<String, Object> text = new LinkedHashMap<>();
        text.put("status", more ? "additional" : "generated");
        text.put("div", narrative.div());
        members.put("text", text);
        return this;
    }

    /** A narrative that says no more than the coded members do. */
    FhirObject withNarrative(FhirNarrative narrative) {
        return withNarrative(narrative, false);
    }

    /** A copy of a resource with its id in the place where readers look for it. */
    FhirObject withId(String id) {
        FhirObject copy = new FhirObject();
        members.forEach((name, value) -> {
            copy.members.put(name, value);
            if (name.equals("resourceType")) {
                copy.members.put("id", id);
            }
        });
        return copy;
    }

    boolean has(String name) {
        return members.containsKey(name);
    }

    boolean isEmpty() {
        return members.isEmpty();
    }

    @JsonValue
    Map<String, Object> members() {
        return members;
    }
}
