package varanid.intake.visit;

import java.math.BigDecimal;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The code systems and canonical addresses that our FHIR documents use; docs/fhir.md explains those of our own. */
final class FhirCode {

    /** All our own names begin so: they name a thing, and nothing is to be fetched there. */
    static final String OURS = "urn:varanid-intake:";

    /** {@link Basis}. */
    static final String BASIS = OURS + "basis";
    /** {@link Part}, and the two parts that a document has besides. */
    static final String PART = OURS + "part";
    /** {@link Statement#code}. */
    static final String STATEMENT = OURS + "statement";
    /** {@link Summary.Alert#code}. */
    static final String ALERT = OURS + "alert";
    /** What a checklist looks for. */
    static final String FINDING = OURS + "finding";
    /** With a finding behind it: its levels. */
    static final String LEVEL = OURS + "level:";
    /** With an attribute behind it, such as the life stage: its values. */
    static final String ATTRIBUTE = OURS + "attribute:";
    /** Circumstances of a look. */
    static final String CONDITION = OURS + "condition";
    /** How strictly apart. */
    static final String ISOLATION = OURS + "isolation";
    /** Genus and species as recorded. */
    static final String SPECIES = OURS + "species";
    /** What stands on the cage; unique within an organisation at best. */
    static final String TAG = OURS + "tag";
    /** A person of an organisation, known by id only. */
    static final String PERSON = OURS + "person";
    /** With an id behind it: a checklist, as a questionnaire. */
    static final String CHECKLIST = OURS + "checklist:";
    /** The SHA-256 of a checklist's file. */
    static final String CHECKLIST_DIGEST = OURS + "checklist-sha256";
    /** Why an answer is less certain than it looks, as the checklist reads it. */
    static final String ANSWER_READING = OURS + "extension:answer-reading";

    static final String UUIDS = "urn:ietf:rfc:3986";
    static final String UCUM = "http://unitsofmeasure.org";
    static final String LOINC = "http://loinc.org";
    static final String URGENCY = "http://hl7.org/fhir/request-priority";
    static final String ABSENT = "http://terminology.hl7.org/CodeSystem/data-absent-reason";
    static final String ABSENT_EXTENSION = "http://hl7.org/fhir/StructureDefinition/data-absent-reason";
    static final String OBSERVATION_CATEGORY = "http://terminology.hl7.org/CodeSystem/observation-category";
    static final String ANIMAL_EXTENSION = "http://hl7.org/fhir/StructureDefinition/patient-animal";
    static final String UNIT_OPTION_EXTENSION = "http://hl7.org/fhir/StructureDefinition/questionnaire-unitOption";
    /** The standard that numbers transponders: no other system for them is known to us, so its own URN (RFC 5141). */
    static final String TRANSPONDER = "urn:iso:std:iso:11784";

    /** Older chips, whose numbers nothing could be checked against. */
    static final String TRANSPONDER_OF_NO_STANDARD = OURS + "transponder-of-no-standard";

    /** UCUM codes that people do not read as they are. */
    private static final Map<String, String> READABLE_UNIT =
            Map.of("Cel", "°C", "[degF]", "°F", "d", "days", "[lb_av]", "lb", "[oz_av]", "oz", "[in_i]", "in");

    private FhirCode() {}

    static FhirObject coding(String system, String code, @Nullable String display) {
        return FhirObject.of().with("system", system).with("code", code).with("display", display);
    }

    static FhirObject concept(@Nullable FhirObject coding, @Nullable String text) {
        return FhirObject.of().withOne("coding", coding).with("text", text);
    }

    static FhirObject quantity(BigDecimal value, String unit) {
        return FhirObject.of()
                .with("value", value)
                .with("unit", READABLE_UNIT.getOrDefault(unit, unit))
                .with("system", UCUM)
                .with("code", unit);
    }

    /** How a resource came to be known, for machines. */
    static FhirObject meta(Basis basis) {
        return FhirObject.of().withOne("tag", coding(BASIS, basis.code(), null));
    }

    static FhirObject uuid(String id) {
        return FhirObject.of().with("system", UUIDS).with("value", "urn:uuid:" + id);
    }
}
