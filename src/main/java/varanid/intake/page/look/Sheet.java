package varanid.intake.page.look;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import varanid.intake.assessment.ReadLook;
import varanid.intake.checklist.Edition;
import varanid.intake.scoring.ChecklistDraft;

/**
 * The questions of a checklist as the page asks them.
 *
 * @param mustSee what has to be seen, in the order asked
 * @param sections the other questions
 */
public record Sheet(
        String checklist,
        int version,
        List<Condition> conditions,
        List<Question> mustSee,
        List<Section> sections,
        List<Outcome> outcomes) {

    /** The answers that are no level of the finding; see {@code docs/api.md}. */
    static final String UNSEEN = "not-observed";

    static final String NOT_YET = "not-yet-due";

    /** How the reassuring level is called where it says that a sign is not there. */
    private static final Set<String> NOTHING_THERE = Set.of("absent", "none");

    public record Condition(String id, String label, String help, boolean chosen) {}

    public record Section(String id, String title, List<Question> questions, boolean none) {
        /** Whether there is anything that "none of these" would answer. */
        public boolean hasSigns() {
            return questions.stream().anyMatch(question -> !question.absent().isEmpty());
        }
    }

    public record Outcome(String code, String label) {}

    /** @param file its name; width and height in pixels, so that a page has room for it before it is there */
    public record Drawing(String file, int width, int height) {}

    /**
     * One question.
     *
     * @param place the id of its place in the page
     * @param drawing where to look
     * @param absent the answer that "none of these" gives; empty where it gives none
     * @param last what was answered last time, for people; empty where nothing was
     */
    public record Question(
            String id,
            String place,
            String question,
            String help,
            String lookAlike,
            @Nullable Drawing drawing,
            String absent,
            String last,
            List<Choice> choices,
            @Nullable Number number,
            List<String> faults) {}

    /**
     * @param kind {@code level}, {@code not-seen} or {@code later}
     * @param hint what it means; empty where the label says it
     * @param emergency whether it alone asks for the most urgent outcome
     */
    public record Choice(
            String value,
            String label,
            String hint,
            String kind,
            @Nullable Drawing drawing,
            boolean emergency,
            boolean chosen) {}

    /** A number, and the one beside it that it needs; that one's label is empty where it needs none. */
    public record Number(
            String label,
            String step,
            String min,
            String max,
            String typed,
            String secondLabel,
            String secondMin,
            String secondMax,
            String secondTyped) {}

    /** What the page itself says, beside the checklist's texts. */
    record Words(String unseen, String notYet) {}

    static Sheet of(
            Edition edition,
            LookForm form,
            Map<String, List<String>> faults,
            Optional<ReadLook> last,
            Map<String, Drawing> drawings,
            Words words) {
        ChecklistDraft draft = edition.checklist().draft();
        Map<String, String> before = last.map(LastAnswers::of).orElse(Map.of());
        Making making = new Making(edition, form, faults, before, drawings, words);
        List<Section> sections = new ArrayList<>();
        for (ChecklistDraft.Section section : draft.sections()) {
            List<Question> questions = draft.findings().stream()
                    .filter(finding -> !finding.mustSee() && finding.section().equals(section.id()))
                    .map(making::question)
                    .toList();
            if (!questions.isEmpty()) {
                sections.add(new Section(
                        section.id(),
                        text(section.title()),
                        questions,
                        !form.typed(LookForm.NONE + section.id()).isBlank()));
            }
        }
        return new Sheet(
                edition.id(),
                edition.version(),
                draft.conditions().stream()
                        .map(condition -> new Condition(
                                condition.id(),
                                text(condition.label()),
                                text(condition.help()),
                                form.isTyped(LookForm.CONDITION, condition.id())))
                        .toList(),
                draft.findings().stream()
                        .filter(ChecklistDraft.Finding::mustSee)
                        .map(making::question)
                        .toList(),
                sections,
                draft.outcomes().stream()
                        .map(outcome -> new Outcome(outcome.code(), text(outcome.label())))
                        .toList());
    }

    /** The id of the place of a question. */
    static String place(String finding) {
        return "q-" + finding;
    }

    /**
     * The level that "none of these signs" stands for. There is none where having seen nothing is no answer: what has to
     * be seen, what only shows by chance, what takes time, what is counted, and what somebody would have to have been
     * told.
     */
    static Optional<String> findAbsent(Edition edition, ChecklistDraft.Finding finding) {
        ChecklistDraft.@Nullable Isolation isolation =
                edition.checklist().draft().isolation();
        boolean asked = isolation != null
                && isolation.unknownExposure() != null
                && isolation.unknownExposure().findings().contains(finding.id());
        if (finding.mustSee()
                || finding.ifSeenByChance()
                || finding.notYetDue() != null
                || finding.measure() != null
                || asked) {
            return Optional.empty();
        }
        return finding.levels().stream()
                .findFirst()
                .map(ChecklistDraft.Level::code)
                .filter(NOTHING_THERE::contains);
    }

    private static String text(@Nullable String text) {
        return text == null ? "" : text;
    }

    private record Making(
            Edition edition,
            LookForm form,
            Map<String, List<String>> faults,
            Map<String, String> before,
            Map<String, Drawing> drawings,
            Words words) {

        Question question(ChecklistDraft.Finding finding) {
            String id = finding.id();
            return new Question(
                    id,
                    place(id),
                    finding.question() == null ? id : finding.question(),
                    text(finding.help()),
                    text(finding.lookAlike()),
                    drawing(id),
                    findAbsent(edition, finding).orElse(""),
                    before.getOrDefault(id, ""),
                    choices(finding),
                    number(finding),
                    faults.getOrDefault(place(id), List.of()));
        }

        private List<Choice> choices(ChecklistDraft.Finding finding) {
            List<Choice> choices = new ArrayList<>();
            String field = LookForm.ANSWER + finding.id();
            List<ChecklistDraft.Outcome> outcomes = edition.checklist().draft().outcomes();
            String most = outcomes.get(outcomes.size() - 1).code();
            if (finding.measure() == null) {
                for (ChecklistDraft.Level level : finding.levels()) {
                    choices.add(new Choice(
                            level.code(),
                            level.label() == null ? level.code() : level.label(),
                            "",
                            "level",
                            drawing(finding.id() + "." + level.code()),
                            most.equals(level.floor()),
                            form.isTyped(field, level.code())));
                }
            }
            choices.add(new Choice(UNSEEN, words.unseen(), "", "not-seen", null, false, form.isTyped(field, UNSEEN)));
            if (finding.notYetDue() != null) {
                choices.add(new Choice(
                        NOT_YET,
                        words.notYet(),
                        text(finding.notYetDue().meaning()),
                        "later",
                        null,
                        false,
                        form.isTyped(field, NOT_YET)));
            }
            return choices;
        }

        private @Nullable Drawing drawing(String of) {
            return drawings.get(of + ".svg");
        }

        private @Nullable Number number(ChecklistDraft.Finding finding) {
            ChecklistDraft.@Nullable Measure measure = finding.measure();
            if (measure == null) {
                return null;
            }
            ChecklistDraft.@Nullable Companion companion = measure.companion();
            return new Number(
                    measure.label() == null ? measure.unit() : measure.label(),
                    measure.step().toPlainString(),
                    measure.min().toPlainString(),
                    measure.max().toPlainString(),
                    form.typed(LookForm.NUMBER + finding.id()),
                    companion == null ? "" : companion.label() == null ? companion.unit() : companion.label(),
                    companion == null ? "" : companion.min().toPlainString(),
                    companion == null ? "" : companion.max().toPlainString(),
                    form.typed(LookForm.SECOND + finding.id()));
        }
    }

    /** What was answered in an earlier look, in its checklist's words. */
    private static final class LastAnswers {

        static Map<String, String> of(ReadLook look) {
            Map<String, String> answers = new java.util.HashMap<>();
            look.document()
                    .path("answers")
                    .properties()
                    .forEach(answer -> look.edition()
                            .checklist()
                            .findFinding(answer.getKey())
                            .flatMap(finding -> words(finding, answer.getValue()))
                            .ifPresent(words -> answers.put(answer.getKey(), words)));
            return answers;
        }

        /** Nothing where it was not seen: then there is nothing to compare with. */
        private static Optional<String> words(ChecklistDraft.Finding finding, JsonNode answer) {
            if (answer.isString()) {
                return finding.levels().stream()
                        .filter(level -> level.code().equals(answer.stringValue()))
                        .findFirst()
                        .map(level -> level.label() == null ? level.code() : level.label());
            }
            if (finding.measure() == null) {
                return Optional.empty();
            }
            String unit = finding.measure().label() == null
                    ? finding.measure().unit()
                    : finding.measure().label();
            JsonNode value = answer.isNumber() ? answer : answer.path("value");
            if (value.isNumber()) {
                return Optional.of(value.decimalValue().toPlainString() + " " + unit);
            }
            JsonNode low = answer.path("low");
            JsonNode high = answer.path("high");
            return low.isNumber() && high.isNumber()
                    ? Optional.of(low.decimalValue().toPlainString() + " to "
                            + high.decimalValue().toPlainString() + " " + unit)
                    : Optional.empty();
        }
    }
}
