package varanid.intake.visit;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import varanid.intake.checklist.Edition;
import varanid.intake.scoring.ChecklistDraft;

/**
 * A version of the checklist as a Questionnaire, and a look as a QuestionnaireResponse to it.
 *
 * <p>Every finding has an item in both. Where nothing was answered the item says why, with the published extension
 * {@code data-absent-reason}: {@code asked-unknown} for what could not be seen, {@code temp-unknown} for what cannot be
 * known yet, {@code not-asked} for what nobody looked at.
 */
final class FhirChecklist {

    private static final String CIRCUMSTANCES = "look";
    private static final String CONDITIONS = "look.conditions";
    private static final String SKIN = "look.skin-temperature";
    private static final String NOTE = "look.note";

    /** Why an answer that was given is not taken for certain. */
    private static final Set<String> DOUBTS = Set.of("masked", "explained", "interval", "implied");

    private final Edition edition;
    private final ChecklistDraft draft;

    FhirChecklist(Edition edition) {
        this.edition = edition;
        this.draft = edition.checklist().draft();
    }

    /** With its version, as a reference to exactly this one. */
    String canonical() {
        return FhirCode.CHECKLIST + edition.id() + "|" + edition.version();
    }

    UUID id() {
        return UUID.nameUUIDFromBytes((canonical() + "|" + edition.sha256()).getBytes(StandardCharsets.UTF_8));
    }

    /** The words for a level, where the finding has it. */
    Optional<String> findLevelLabel(String finding, String level) {
        return draft.findings().stream()
                .filter(each -> each.id().equals(finding))
                .flatMap(each -> each.levels().stream())
                .filter(each -> each.code().equals(level))
                .map(each -> each.label() == null ? each.code() : each.label())
                .findFirst();
    }

    // ------------------------------------------------------------------------------------------- Questionnaire

    FhirObject questionnaire(FhirNarrative narrative) {
        List<FhirObject> items = new ArrayList<>();
        items.add(circumstances());
        Map<String, List<FhirObject>> bySection = new LinkedHashMap<>();
        draft.sections().forEach(section -> bySection.put(section.id(), new ArrayList<>()));
        draft.findings()
                .forEach(finding -> bySection
                        .computeIfAbsent(finding.section(), any -> new ArrayList<>())
                        .addAll(questions(finding)));
        draft.sections()
                .forEach(section -> items.add(group(
                        "section." + section.id(), section.title(), bySection.getOrDefault(section.id(), List.of()))));
        return FhirObject.resource("Questionnaire")
                .withNarrative(narrative.paragraph("title", draft.title()).paragraph("about", draft.about()))
                .with("url", FhirCode.CHECKLIST + edition.id())
                .withOne(
                        "identifier",
                        FhirObject.of()
                                .with("system", FhirCode.CHECKLIST_DIGEST)
                                .with("value", edition.sha256()))
                .with("version", String.valueOf(edition.version()))
                .with("name", name())
                .with("title", draft.title())
                .with("status", edition.published() ? "active" : "draft")
                .withTexts("subjectType", List.of("Patient"))
                .with("description", draft.about() == null ? null : FhirText.markdown(draft.about()))
                .with("item", items);
    }

    /** An identifier for programs: capital letter first, letters, digits and underscores only. */
    private String name() {
        return "Checklist_" + edition.id().replaceAll("[^A-Za-z0-9]", "_");
    }

    private FhirObject circumstances() {
        List<FhirObject> items = new ArrayList<>();
        for (ChecklistDraft.Attribute attribute : draft.attributes()) {
            String system = FhirCode.ATTRIBUTE + attribute.id();
            items.add(question(attributeItem(attribute.id()), orElse(attribute.label(), attribute.id()), "choice")
                    .with(
                            "answerOption",
                            attribute.values().stream()
                                    .map(value -> option(FhirCode.coding(system, value.code(), value.label())))
                                    .toList()));
        }
        items.add(question(CONDITIONS, "Circumstances of the look", "choice")
                .with("repeats", true)
                .with(
                        "answerOption",
                        draft.conditions().stream()
                                .map(condition -> option(conditionCoding(condition)))
                                .toList()));
        FhirObject skin = FhirObject.of()
                .with("extension", List.of(unitOption("Cel"), unitOption("[degF]")))
                .with("linkId", SKIN)
                .with("text", "Temperature of the skin")
                .with("type", "quantity");
        items.add(skin);
        items.add(question(NOTE, "Note", "text"));
        return group(CIRCUMSTANCES, "The animal and the look", items);
    }

    private List<FhirObject> questions(ChecklistDraft.Finding finding) {
        String text = orElse(finding.question(), finding.id());
        ChecklistDraft.Measure measure = finding.measure();
        if (measure == null) {
            return List.of(coded(finding, question(finding.id(), text, "choice"))
                    .with(
                            "answerOption",
                            finding.levels().stream()
                                    .map(level -> option(levelCoding(finding.id(), level.code(), level.label())))
                                    .toList()));
        }
        List<FhirObject> items = new ArrayList<>();
        items.add(measured(finding.id(), text, measure.unit(), finding));
        ChecklistDraft.Companion companion = measure.companion();
        if (companion != null) {
            items.add(measured(
                    companionItem(finding, companion),
                    orElse(companion.label(), companion.id()),
                    companion.unit(),
                    null));
        }
        return items;
    }

    /** It may be answered twice: by the least and the most it can be, where the instrument cannot say it more exactly. */
    private static FhirObject measured(
            String linkId, String text, String unit, ChecklistDraft.@Nullable Finding finding) {
        FhirObject item = FhirObject.of().withOne("extension", unitOption(unit)).with("linkId", linkId);
        return (finding == null ? item : coded(finding, item))
                .with("text", text)
                .with("type", "quantity")
                .with("repeats", true);
    }

    private static FhirObject coded(ChecklistDraft.Finding finding, FhirObject item) {
        return item.withOne("code", FhirCode.coding(FhirCode.FINDING, finding.id(), null));
    }

    private static FhirObject unitOption(String unit) {
        return FhirObject.of()
                .with("url", FhirCode.UNIT_OPTION_EXTENSION)
                .with("valueCoding", FhirCode.coding(FhirCode.UCUM, unit, null));
    }

    private static FhirObject question(String linkId, String text, String type) {
        return FhirObject.of().with("linkId", linkId).with("text", text).with("type", type);
    }

    private static FhirObject group(String linkId, @Nullable String title, List<FhirObject> items) {
        return FhirObject.of()
                .with("linkId", linkId)
                .with("text", title)
                .with("type", "group")
                .with("item", items);
    }

    private static FhirObject option(FhirObject coding) {
        return FhirObject.of().with("valueCoding", coding);
    }

    private static FhirObject conditionCoding(ChecklistDraft.Condition condition) {
        return FhirCode.coding(FhirCode.CONDITION, condition.id(), condition.label());
    }

    private static FhirObject levelCoding(String finding, String level, @Nullable String label) {
        return FhirCode.coding(FhirCode.LEVEL + finding, level, label);
    }

    private static String attributeItem(String id) {
        return CIRCUMSTANCES + "." + id;
    }

    private static String companionItem(ChecklistDraft.Finding finding, ChecklistDraft.Companion companion) {
        return finding.id() + "." + companion.id();
    }

    private static String orElse(@Nullable String text, String otherwise) {
        return text == null ? otherwise : text;
    }

    // ------------------------------------------------------------------------------------ QuestionnaireResponse

    /**
     * @param look as it is kept
     * @param document that it comes into
     */
    FhirObject response(JsonNode look, FhirDocument document) {
        Map<String, JsonNode> unknowns = new HashMap<>();
        look.path("unknowns")
                .forEach(unknown -> unknowns.put(unknown.path("finding").asString(""), unknown));
        List<FhirObject> items = new ArrayList<>();
        items.add(answeredGroup(CIRCUMSTANCES, "The animal and the look", circumstancesOf(look)));
        for (ChecklistDraft.Section section : draft.sections()) {
            List<FhirObject> answers = draft.findings().stream()
                    .filter(finding -> finding.section().equals(section.id()))
                    .flatMap(finding ->
                            answers(finding, look.path("answers").path(finding.id()), unknowns.get(finding.id()))
                                    .stream())
                    .toList();
            items.add(answeredGroup("section." + section.id(), section.title(), answers));
        }
        FhirNarrative narrative = document.narrative().paragraph("title", draft.title());
        narrative.paragraph("when", document.when(moment(look, "occurredAt")));
        return FhirObject.resource("QuestionnaireResponse")
                .with("meta", FhirCode.meta(Basis.OBSERVED))
                .withNarrative(narrative)
                .with("identifier", FhirCode.uuid(look.path("id").asString("")))
                .with("questionnaire", canonical())
                .with("status", look.has("supersedes") ? "amended" : "completed")
                .with("subject", document.patient())
                .with("authored", moment(look, "occurredAt"))
                .with("author", observer(look))
                .with("item", items.stream().filter(item -> !item.isEmpty()).toList());
    }

    /** Who looked, by the id that the organisation knows them by: an identifier, since no person's resource is sent. */
    static @Nullable FhirObject observer(JsonNode look) {
        String id = look.path("observerId").asString("");
        return id.isEmpty()
                ? null
                : FhirObject.of()
                        .with(
                                "identifier",
                                FhirObject.of().with("system", FhirCode.PERSON).with("value", id));
    }

    static @Nullable Instant moment(JsonNode look, String member) {
        JsonNode text = look.path(member);
        return text.isString() ? Instant.parse(text.stringValue()) : null;
    }

    private List<FhirObject> circumstancesOf(JsonNode look) {
        List<FhirObject> items = new ArrayList<>();
        for (ChecklistDraft.Attribute attribute : draft.attributes()) {
            String code = look.path("animal").path(attribute.id()).asString("");
            attribute.values().stream()
                    .filter(value -> value.code().equals(code))
                    .forEach(value -> items.add(item(attributeItem(attribute.id()), attribute.label())
                            .withOne(
                                    "answer",
                                    option(FhirCode.coding(
                                            FhirCode.ATTRIBUTE + attribute.id(), code, value.label())))));
        }
        Set<String> conditions = new HashSet<>();
        look.path("conditions").forEach(condition -> conditions.add(condition.asString("")));
        List<FhirObject> ticked = draft.conditions().stream()
                .filter(condition -> conditions.contains(condition.id()))
                .map(condition -> option(conditionCoding(condition)))
                .toList();
        if (!ticked.isEmpty()) {
            items.add(item(CONDITIONS, "Circumstances of the look").with("answer", ticked));
        }
        JsonNode skin = look.path("skinTemperature");
        if (skin.isObject()) {
            items.add(item(SKIN, "Temperature of the skin")
                    .withOne(
                            "answer",
                            valueQuantity(FhirCode.quantity(
                                    skin.path("value").decimalValue(),
                                    skin.path("unit").asString("Cel")))));
        }
        String note = look.path("note").asString("");
        if (!FhirText.string(note).isEmpty()) {
            items.add(item(NOTE, "Note").withOne("answer", FhirObject.of().with("valueString", note)));
        }
        return items;
    }

    private static List<FhirObject> answers(
            ChecklistDraft.Finding finding, JsonNode answer, @Nullable JsonNode unknown) {
        List<FhirObject> items = new ArrayList<>();
        FhirObject item = FhirObject.of();
        List<FhirObject> extensions = new ArrayList<>();
        String why = unknown == null ? "" : unknown.path("why").asString("");
        if (DOUBTS.contains(why)) {
            extensions.add(FhirObject.of().with("url", FhirCode.ANSWER_READING).with("valueCode", why));
        }
        List<FhirObject> given = given(finding, answer);
        if (given.isEmpty()) {
            extensions.add(FhirObject.of()
                    .with("url", FhirCode.ABSENT_EXTENSION)
                    .with("valueCode", absentBecause(answer.asString(""))));
        }
        item.with("extension", extensions)
                .with("linkId", finding.id())
                .with("text", orElse(finding.question(), finding.id()))
                .with("answer", given);
        items.add(item);
        ChecklistDraft.Companion companion =
                finding.measure() == null ? null : finding.measure().companion();
        if (companion != null && answer.path(companion.id()).isNumber()) {
            items.add(item(companionItem(finding, companion), orElse(companion.label(), companion.id()))
                    .withOne(
                            "answer",
                            valueQuantity(FhirCode.quantity(
                                    answer.path(companion.id()).decimalValue(), companion.unit()))));
        }
        return items;
    }

    /** Whether an answer says that there is none. */
    static boolean isAbsent(String answer) {
        return answer.isEmpty() || answer.equals("not-observed") || answer.equals("not-yet-due");
    }

    /** Why a finding has no value, as the published codes have it. */
    static String absentBecause(String answer) {
        return switch (answer) {
            case "not-observed" -> "asked-unknown";
            case "not-yet-due" -> "temp-unknown";
            default -> "not-asked";
        };
    }

    private static List<FhirObject> given(ChecklistDraft.Finding finding, JsonNode answer) {
        ChecklistDraft.Measure measure = finding.measure();
        if (measure == null) {
            String code = answer.asString("");
            return finding.levels().stream()
                    .filter(level -> level.code().equals(code))
                    .map(level -> option(levelCoding(finding.id(), code, level.label())))
                    .toList();
        }
        JsonNode exact = answer.isNumber() ? answer : answer.path("value");
        if (exact.isNumber()) {
            return List.of(valueQuantity(FhirCode.quantity(exact.decimalValue(), measure.unit())));
        }
        if (answer.path("low").isNumber() && answer.path("high").isNumber()) {
            return List.of(
                    valueQuantity(bound(answer.path("low").decimalValue(), ">=", measure.unit())),
                    valueQuantity(bound(answer.path("high").decimalValue(), "<=", measure.unit())));
        }
        return List.of();
    }

    private static FhirObject bound(BigDecimal value, String comparator, String unit) {
        return FhirCode.quantity(value, unit).with("comparator", comparator);
    }

    private static FhirObject valueQuantity(FhirObject quantity) {
        return FhirObject.of().with("valueQuantity", quantity);
    }

    private static FhirObject item(String linkId, @Nullable String text) {
        return FhirObject.of().with("linkId", linkId).with("text", text);
    }

    private static FhirObject answeredGroup(String linkId, @Nullable String title, List<FhirObject> items) {
        return items.isEmpty() ? FhirObject.of() : item(linkId, title).with("item", items);
    }
}
