package varanid.intake.assessment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonValue;
import varanid.intake.scoring.Answer;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.Fault;
import varanid.intake.scoring.Look;

/**
 * The part of a request body that is a look: which checklist, what is known about the animal, under which conditions it
 * was looked at, and the answers. Reading it notes every fault, those of the answers' meaning included.
 */
final class LookRequest {

    private static final int MOST_ANSWERS = 300;
    private static final int MOST_CONDITIONS = 40;

    private final @Nullable Edition edition;
    private final Map<String, String> attributes = new LinkedHashMap<>();
    private final Set<String> conditions = new LinkedHashSet<>();
    private final Map<String, Answer> answers = new LinkedHashMap<>();

    /** Where in the body each thing stands, so that a fault found later can be noted there. */
    private final Map<String, JsonValue> places = new LinkedHashMap<>();

    /**
     * @param known attribute values that hold where the request names none
     */
    private LookRequest(JsonFields fields, Catalogue catalogue, Map<String, String> known) {
        edition = readEdition(fields, catalogue).orElse(null);
        fields.list("conditions", MOST_CONDITIONS, this::readCondition);
        fields.entries("answers", MOST_ANSWERS, this::readAnswer);
        if (edition != null) {
            readAttributes(edition, fields, known);
            refuseWhatCannotBeScored(edition, fields);
        }
    }

    private LookRequest(LookRequest given, Map<String, Answer> more) {
        edition = given.edition;
        attributes.putAll(given.attributes);
        conditions.addAll(given.conditions);
        answers.putAll(more);
        answers.putAll(given.answers);
    }

    static LookRequest read(JsonFields fields, Catalogue catalogue, Map<String, String> known) {
        return new LookRequest(fields, catalogue, known);
    }

    private static Optional<Edition> readEdition(JsonFields fields, Catalogue catalogue) {
        List<String> ids = catalogue.list().stream().map(Edition::id).distinct().toList();
        Given<String> id = fields.choice("checklist", ids, it -> it).required();
        Given<Integer> version = fields.integer("version", 1, 1_000_000);
        if (!id.isGiven()) {
            return Optional.empty();
        }
        if (!version.isGiven()) {
            return fields.field("version").isGiven() ? Optional.empty() : catalogue.findNewest(id.get());
        }
        Optional<Edition> found = catalogue.find(id.get(), version.get());
        if (found.isEmpty()) {
            String there = String.join(
                    ", ",
                    catalogue.list().stream()
                            .filter(edition -> edition.id().equals(id.get()))
                            .map(edition -> String.valueOf(edition.version()))
                            .toList());
            version.fault("there is no version " + version.get(), "one of: " + there);
        }
        return found;
    }

    private Given<String> readCondition(JsonValue value) {
        Given<String> condition = value.text(60);
        condition.find().ifPresent(id -> {
            if (conditions.add(id)) {
                places.put("/conditions/" + (conditions.size() - 1), value);
            } else {
                value.fault("is there twice", "each condition once");
            }
        });
        return condition;
    }

    private Given<Answer> readAnswer(String finding, JsonValue value) {
        places.put("/answers/" + finding.replace("~", "~0").replace("/", "~1"), value);
        ChecklistDraft.Finding asked = edition == null
                ? null
                : edition.checklist().findFinding(finding).orElse(null);
        Given<Answer> answer = AnswerJson.read(value, asked);
        answer.find().ifPresent(it -> answers.put(finding, it));
        return answer;
    }

    private void readAttributes(Edition of, JsonFields fields, Map<String, String> known) {
        for (ChecklistDraft.Attribute attribute : of.checklist().draft().attributes()) {
            places.put("/" + attribute.id(), fields.field(attribute.id()));
            Given<String> given = fields.text(attribute.id(), 60);
            String value = given.orElse(known.getOrDefault(attribute.id(), ""));
            if (!value.isEmpty()) {
                attributes.put(attribute.id(), value);
            }
        }
    }

    private void refuseWhatCannotBeScored(Edition of, JsonFields fields) {
        for (Fault fault : of.scorer().faultsOf(look(Set.of()))) {
            note(fault, fields);
        }
    }

    /** At the place itself, or at the nearest one above it: a second number is told at the answer it belongs to. */
    private void note(Fault fault, JsonFields fields) {
        String at = fault.pointer();
        while (!at.isEmpty()) {
            JsonValue place = places.get(at);
            if (place != null) {
                String within = fault.pointer().substring(at.length());
                place.fault(
                        within.isEmpty() ? fault.wrong() : within.substring(1) + " " + fault.wrong(), fault.right());
                return;
            }
            at = at.substring(0, at.lastIndexOf('/'));
        }
        fields.fault(fault.pointer() + " " + fault.wrong(), fault.right());
    }

    /** What is kept must mean the same for ever, and only a published version does. */
    void mustBePublished(JsonFields fields) {
        if (edition != null && !edition.published()) {
            fields.field("version")
                    .fault(
                            "version " + edition.version() + " is a draft",
                            "a published version; a draft can only be scored");
        }
    }

    Edition edition() {
        return Objects.requireNonNull(edition, "a request without a checklist has a fault");
    }

    Look look(Set<String> explainedBefore) {
        return new Look(answers, attributes, conditions, explainedBefore);
    }

    /** The same look with answers that nobody gave; what was given stands. */
    LookRequest filledWith(Map<String, Answer> more) {
        return new LookRequest(this, more);
    }

    boolean isAnswered(String finding) {
        return answers.containsKey(finding);
    }

    Map<String, String> attributes() {
        return attributes;
    }

    List<String> conditions() {
        return new ArrayList<>(conditions);
    }

    /** The answers as they were given, in the order the checklist asks. */
    Map<String, Object> answersAsGiven() {
        Map<String, Object> given = new LinkedHashMap<>();
        for (ChecklistDraft.Finding finding : edition().checklist().draft().findings()) {
            Answer answer = answers.get(finding.id());
            if (answer != null) {
                given.put(finding.id(), AnswerJson.write(answer, finding));
            }
        }
        return given;
    }
}
