package varanid.intake.visit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import varanid.intake.checklist.Catalogue;

/**
 * The last look: the checklist, what was answered, and what this service worked out from it.
 *
 * <p>Where nobody has looked it is empty. Where this build no longer has the version of the checklist, the answers are
 * not sent as coded ones, since nothing could say what they mean; the narrative has them all the same.
 */
final class FhirLook {

    private final @Nullable FhirChecklist checklist;
    private final @Nullable FhirObject response;
    private final List<FhirObject> ofFindings;
    private final List<FhirObject> ofRecommendation;

    private FhirLook(
            @Nullable FhirChecklist checklist,
            @Nullable FhirObject response,
            List<FhirObject> ofFindings,
            List<FhirObject> ofRecommendation) {
        this.checklist = checklist;
        this.response = response;
        this.ofFindings = ofFindings;
        this.ofRecommendation = ofRecommendation;
    }

    static FhirLook write(Summary summary, Catalogue catalogue, FhirDocument document) {
        JsonNode look = summary.look();
        if (look == null) {
            return new FhirLook(null, null, List.of(), List.of());
        }
        JsonNode used = look.path("checklist");
        Optional<FhirChecklist> checklist = catalogue
                .find(used.path("id").asString(""), used.path("version").asInt(0))
                .filter(edition -> edition.sha256().equals(used.path("digest").asString("")))
                .map(FhirChecklist::new);
        List<FhirObject> ofFindings = new ArrayList<>();
        @Nullable FhirObject response = null;
        if (checklist.isPresent()) {
            FhirChecklist it = checklist.get();
            ofFindings.add(document.add(it.id(), it.questionnaire(document.narrative())));
            response = document.add(lookId(look, document), it.response(look, document));
            ofFindings.add(response);
        }
        FhirObject assessment = document.add(document.id("recommendation"), riskAssessment(look, response, document));
        return new FhirLook(checklist.orElse(null), response, ofFindings, List.of(assessment));
    }

    private static UUID lookId(JsonNode look, FhirDocument document) {
        String id = look.path("id").asString("");
        return id.isEmpty() ? document.id("look") : UUID.fromString(id);
    }

    private static FhirObject riskAssessment(JsonNode look, @Nullable FhirObject response, FhirDocument document) {
        HandOverTexts texts = document.texts();
        JsonNode urgency = look.path("urgency");
        List<FhirObject> predictions = new ArrayList<>();
        predictions.add(FhirObject.of()
                .with("outcome", FhirCode.concept(null, urgency.path("headline").asString(texts.page("how-soon"))))
                .with(
                        "qualitativeRisk",
                        FhirCode.concept(
                                FhirCode.coding(
                                        FhirCode.URGENCY,
                                        urgency.path("recommended").asString(""),
                                        null),
                                urgency.path("label").asString("")))
                .with("rationale", rationale(look, texts)));
        JsonNode isolation = look.path("isolation");
        if (isolation.isObject()) {
            predictions.add(FhirObject.of()
                    .with("outcome", FhirCode.concept(null, texts.page("how-apart")))
                    .with(
                            "qualitativeRisk",
                            FhirCode.concept(
                                    FhirCode.coding(
                                            FhirCode.ISOLATION,
                                            isolation.path("recommended").asString(""),
                                            null),
                                    null))
                    .with("rationale", texts(isolation.path("because"), texts)));
        }
        List<FhirObject> notes = new ArrayList<>();
        notes.add(note(texts.say("unvalidated")));
        look.path("notices").forEach(notice -> notes.add(note(notice.asString(""))));
        if (!urgency.path("settled").asBoolean(true)) {
            notes.add(note(texts.say(
                    "range",
                    "lowest",
                    texts.headline(urgency.path("lowest").asString("")),
                    "highest",
                    texts.headline(urgency.path("highest").asString("")))));
        }
        JsonNode used = look.path("checklist");
        Instant occurred = FhirChecklist.moment(look, "occurredAt");
        return FhirObject.resource("RiskAssessment")
                .with("meta", FhirCode.meta(Basis.COMPUTED))
                .withNarrative(document.narrative()
                        .paragraph("basis", texts.word("basis", Basis.COMPUTED.code()))
                        .paragraph("recommendation", urgency.path("label").asString(""))
                        .paragraph("reasons", rationale(look, texts))
                        .paragraph("notice", texts.say("unvalidated")))
                .with("status", "final")
                .with(
                        "method",
                        FhirCode.concept(
                                null,
                                "Checklist " + used.path("id").asString("") + " version "
                                        + used.path("version").asInt(0) + ", SHA-256 "
                                        + used.path("digest").asString("")))
                .with("subject", document.patient())
                .with("occurrenceDateTime", occurred)
                .with("performer", document.author())
                .withOne("basis", response)
                .with("prediction", predictions)
                .with("note", notes);
    }

    private static FhirObject note(String text) {
        return FhirObject.of().with("text", FhirText.markdown(text));
    }

    private static String rationale(JsonNode look, HandOverTexts words) {
        return texts(look.path("reasons"), words);
    }

    private static String texts(JsonNode reasons, HandOverTexts words) {
        List<String> texts = new ArrayList<>();
        reasons.forEach(reason -> texts.add(LookShown.reasonText(reason, words)));
        return String.join("\n", texts);
    }

    /** What the section of the findings refers to. */
    List<FhirObject> ofFindings() {
        return ofFindings;
    }

    /** What the section of the recommendation refers to. */
    List<FhirObject> ofRecommendation() {
        return ofRecommendation;
    }

    /** The answers, where they could be sent. */
    @Nullable
    FhirObject response() {
        return response;
    }

    /** Gives an Observation the level of a finding as its value, or the reason why there is none. */
    void value(FhirObject observation, Statement.Coding finding, String text) {
        String level = finding.value() == null ? "" : finding.value();
        boolean known = checklist != null
                && checklist.findLevelLabel(finding.code(), level).isPresent();
        if (known) {
            observation.with(
                    "valueCodeableConcept",
                    FhirCode.concept(FhirCode.coding(FhirCode.LEVEL + finding.code(), level, null), text));
        } else if (FhirChecklist.isAbsent(level)) {
            observation.with(
                    "dataAbsentReason",
                    FhirCode.concept(FhirCode.coding(FhirCode.ABSENT, FhirChecklist.absentBecause(level), null), text));
        } else {
            observation.with("valueString", text);
        }
    }
}
