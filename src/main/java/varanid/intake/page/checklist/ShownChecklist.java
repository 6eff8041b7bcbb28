package varanid.intake.page.checklist;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import varanid.intake.checklist.Edition;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.ChecklistDraft.Advice;
import varanid.intake.scoring.ChecklistDraft.Attribute;
import varanid.intake.scoring.ChecklistDraft.Combination;
import varanid.intake.scoring.ChecklistDraft.Condition;
import varanid.intake.scoring.ChecklistDraft.Finding;
import varanid.intake.scoring.ChecklistDraft.Implication;
import varanid.intake.scoring.ChecklistDraft.Isolation;
import varanid.intake.scoring.ChecklistDraft.Level;
import varanid.intake.scoring.ChecklistDraft.Section;
import varanid.intake.scoring.ChecklistDraft.Term;

/** A checklist as the page shows it: what its file says, and what in it speaks of what. */
public final class ShownChecklist {

    private final Edition edition;
    private final ChecklistDraft draft;
    private final Optional<Section> only;

    ShownChecklist(Edition edition, Optional<Section> only) {
        this.edition = edition;
        this.draft = edition.checklist().draft();
        this.only = only;
    }

    public Edition edition() {
        return edition;
    }

    public ChecklistDraft draft() {
        return draft;
    }

    /** The only section that is shown, where only one is. */
    public @Nullable Section only() {
        return only.orElse(null);
    }

    /** Where this version is, whatever is newest. */
    public String path() {
        return "/checklist/" + edition.id() + "/versions/" + edition.version();
    }

    /** The address of a part of the page: on it, or on the whole page where it is not shown here. */
    public String to(String anchor) {
        boolean here = only.isEmpty()
                || anchor.startsWith("source-")
                || findings(only.get().id()).stream().anyMatch(finding -> anchor.equals("finding-" + finding.id()));
        return (here ? "" : path()) + "#" + anchor;
    }

    public List<Section> sections() {
        return only.map(List::of).orElse(draft.sections());
    }

    /** The findings of a section. */
    public List<Finding> findings(String section) {
        return draft.findings().stream()
                .filter(finding -> finding.section().equals(section))
                .toList();
    }

    public String question(String finding) {
        return draft.findings().stream()
                .filter(each -> each.id().equals(finding))
                .map(each -> or(each.question(), each.id()))
                .findFirst()
                .orElse(finding);
    }

    public String level(String finding, String code) {
        return draft.findings().stream()
                .filter(each -> each.id().equals(finding))
                .flatMap(each -> each.levels().stream())
                .filter(level -> level.code().equals(code))
                .map(level -> or(level.label(), level.code()))
                .findFirst()
                .orElse(code);
    }

    /** Whether no level that the finding can have is worse: then "or worse" would say nothing. */
    public boolean isWorst(Term term) {
        return draft.findings().stream()
                .filter(each -> each.id().equals(term.finding()))
                .flatMap(each -> each.chains().stream())
                .filter(chain -> chain.contains(term.level()))
                .allMatch(chain -> chain.indexOf(term.level()) == chain.size() - 1);
    }

    public String family(String id) {
        return draft.families().stream()
                .filter(each -> each.id().equals(id))
                .map(each -> or(each.title(), id))
                .findFirst()
                .orElse(id);
    }

    public List<Finding> ofFamily(String family) {
        return draft.findings().stream()
                .filter(each -> family.equals(each.family()))
                .toList();
    }

    public String outcome(String code) {
        return draft.outcomes().stream()
                .filter(each -> each.code().equals(code))
                .map(each -> or(each.label(), code))
                .findFirst()
                .orElse(code);
    }

    public String route(String code) {
        return Stream.ofNullable(draft.isolation())
                .map(Isolation::routes)
                .flatMap(List::stream)
                .filter(each -> each.code().equals(code))
                .map(each -> or(each.label(), code))
                .findFirst()
                .orElse(code);
    }

    public String condition(String id) {
        return draft.conditions().stream()
                .filter(each -> each.id().equals(id))
                .map(each -> or(each.label(), id))
                .findFirst()
                .orElse(id);
    }

    /** What a rule may depend on: an attribute, or another finding. */
    public String name(String attributeOrFinding) {
        return draft.attributes().stream()
                .filter(each -> each.id().equals(attributeOrFinding))
                .map(each -> or(each.label(), each.id()))
                .findFirst()
                .orElseGet(() -> question(attributeOrFinding));
    }

    /** The values of that, in words, as one text. */
    public String values(String attributeOrFinding, List<String> codes) {
        Map<String, String> labels = draft.attributes().stream()
                .filter(each -> each.id().equals(attributeOrFinding))
                .map(Attribute::values)
                .flatMap(List::stream)
                .collect(Collectors.toMap(Attribute.Value::code, value -> or(value.label(), value.code())));
        return codes.stream()
                .map(code -> labels.getOrDefault(code, level(attributeOrFinding, code)))
                .collect(Collectors.joining(", "));
    }

    /** In the same order each time. */
    public Map<String, List<String>> sorted(Map<String, List<String>> when) {
        return new TreeMap<>(when);
    }

    /** The conditions under which a reassuring answer to the finding proves nothing. */
    public List<Condition> maskedBy(String finding) {
        return draft.conditions().stream()
                .filter(each -> each.masks().contains(finding))
                .toList();
    }

    /** The conditions that may be the whole reason for a mild level of the finding. */
    public List<Excuse> excusedBy(String finding) {
        return draft.conditions().stream()
                .flatMap(condition -> condition.explains().stream()
                        .filter(each -> each.finding().equals(finding))
                        .map(each -> new Excuse(condition, each)))
                .toList();
    }

    /** The conditions that make the finding one that has to be seen. */
    public List<Condition> neededWith(String finding) {
        return draft.conditions().stream()
                .filter(each -> each.mustSee().contains(finding))
                .toList();
    }

    public List<Implication> impliedBy(String finding) {
        return draft.implies().stream()
                .filter(each -> each.then().equals(finding))
                .toList();
    }

    public List<Combination> combinationsOf(String finding) {
        return draft.combinations().stream()
                .filter(each -> each.groups().stream()
                        .flatMap(group -> group.of().stream())
                        .anyMatch(term -> term.finding().equals(finding)))
                .toList();
    }

    public List<Advice> adviceOf(String finding) {
        return draft.advice().stream()
                .filter(each -> each.when().findings().stream()
                        .anyMatch(term -> term.finding().equals(finding)))
                .toList();
    }

    /** The levels of a chain, in words. */
    public List<String> chain(Finding finding, List<String> codes) {
        return codes.stream().map(code -> level(finding.id(), code)).toList();
    }

    /** Whether the file's order of the levels does not say already how they get worse. */
    public boolean needsChains(Finding finding) {
        return !finding.chains()
                .equals(List.of(finding.levels().stream().map(Level::code).toList()));
    }

    /** As the file has it, without zeros at the end. */
    public String number(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    public boolean isOne(BigDecimal number) {
        return number.compareTo(BigDecimal.ONE) == 0;
    }

    /** A time in the largest unit that has no fraction; up to two days in hours. */
    public Span span(Duration duration) {
        if (duration.toMinutes() % 60 != 0) {
            return new Span("minutes", duration.toMinutes());
        }
        long hours = duration.toHours();
        return hours > 48 && hours % 24 == 0 ? new Span("days", hours / 24) : new Span("hours", hours);
    }

    private static String or(@Nullable String words, String code) {
        return words == null ? code : words;
    }

    /** A condition, and what it excuses. */
    public record Excuse(Condition condition, Condition.Explains what) {}

    /** @param unit the end of the key of its text */
    public record Span(String unit, long number) {}
}
