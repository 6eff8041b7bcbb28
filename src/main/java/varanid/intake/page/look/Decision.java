package varanid.intake.page.look;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import varanid.intake.assessment.ReadLook;
import varanid.intake.assessment.SignWords;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.scoring.ChecklistDraft;

/**
 * What a look came to, in words. Texts are the checklist's, moments are told in the organisation's zone.
 *
 * @param at when the look was
 * @param steps the scale of urgency, the least first
 * @param label how soon by this look alone
 * @param by until when; empty where the checklist sets no time
 * @param lookAgainAt when to look again for what was unseen; empty where that does not carry the result
 * @param highest how soon it could still be; empty where it is the same as {@code label}
 * @param settled whether no answer that is open could change it
 * @param why what raised it, the weightiest first
 * @param open how many questions have no plain answer
 * @param next what to look at next, the best first
 * @param settling whether good answers to all of {@code next} would settle it
 */
public record Decision(
        String at,
        List<Step> steps,
        String urgency,
        String label,
        String headline,
        String by,
        String lookAgainAt,
        String highest,
        boolean settled,
        List<Reason> why,
        List<String> whyApart,
        List<String> toDo,
        List<String> notToDo,
        List<String> unseenMustSee,
        int open,
        List<Ask> next,
        boolean settling,
        List<Again> again,
        List<String> cautions,
        List<String> notices) {

    /** More would not be read. */
    private static final int NEXT = 3;

    /** How soon, on the scale. */
    public record Step(String code, String label, String meaning) {}

    /**
     * @param asked the question; empty where no single one is the reason
     * @param points together, where many signs are the reason; else empty
     * @param counted false where a heavier sign of the same cause counts instead
     */
    public record Reason(String asked, String text, String points, String why, boolean counted) {

        /** The text, ended as what follows it needs. */
        public String told() {
            return points.isEmpty() ? text.endsWith(".") ? text : text + "." : text + ":";
        }
    }

    /**
     * A question that is still open.
     *
     * @param help how to look, and what never to do to find out
     */
    public record Ask(String question, String help) {}

    /** What is to be looked at again without the condition that excused it. */
    public record Again(String question, String after, String atLatest) {}

    static Decision of(ReadLook look, ZoneId zone, Locale locale) {
        return new Writing(look, zone, locale).decision();
    }

    static String moment(Instant at, ZoneId zone, Locale locale) {
        return ReaderDates.of(locale).weekdayMoment(at, zone);
    }

    /** What the ways of spreading mean, in the checklist's order. */
    static List<Step> routes(Edition edition, Collection<String> codes) {
        ChecklistDraft.@Nullable Isolation isolation =
                edition.checklist().draft().isolation();
        return isolation == null
                ? List.of()
                : isolation.routes().stream()
                        .filter(route -> codes.contains(route.code()))
                        .map(route -> new Step(
                                route.code(),
                                Objects.requireNonNullElse(route.label(), route.code()),
                                Objects.requireNonNullElse(route.meaning(), "")))
                        .toList();
    }

    private record Writing(ReadLook look, ZoneId zone, Locale locale) {

        Decision decision() {
            JsonNode document = look.document();
            JsonNode urgency = document.path("urgency");
            String recommended = text(urgency, "recommended");
            String highest = text(urgency, "highest");
            List<Ask> settling = asks(document.at("/settling/looks"), "");
            List<Ask> next =
                    settling.isEmpty() || settling.size() > NEXT ? asks(document.path("next"), "finding") : settling;
            return new Decision(
                    moment(look.kept().occurredAt()),
                    look.edition().checklist().draft().outcomes().stream()
                            .map(outcome -> new Step(
                                    outcome.code(),
                                    Objects.requireNonNullElse(outcome.label(), outcome.code()),
                                    Objects.requireNonNullElse(outcome.meaning(), "")))
                            .toList(),
                    recommended,
                    look.urgencyLabel(),
                    look.headline(),
                    // What is due at once has no time by which it is.
                    text(urgency, "by").equals(text(document, "occurredAt")) ? "" : moment(urgency, "by"),
                    moment(urgency, "lookAgainAt"),
                    highest.equals(recommended) ? "" : label(highest),
                    urgency.path("settled").booleanValue(false),
                    list(document.path("reasons")).stream().map(this::reason).toList(),
                    list(document.at("/isolation/because")).stream()
                            .map(because -> text(because, "finding").isEmpty()
                                    ? text(because, "text")
                                    : SignWords.tell(text(because, "finding"), text(because, "text")))
                            .distinct()
                            .toList(),
                    advice("do"),
                    advice("do-not"),
                    look.kept().unseenMustSee(),
                    document.path("unknowns").size(),
                    next.stream().limit(NEXT).toList(),
                    !settling.isEmpty() && settling.size() <= NEXT,
                    list(document.path("lookAgain")).stream()
                            .map(again -> new Again(
                                    question(text(again, "finding")).orElse(""),
                                    moment(again, "afterAt"),
                                    moment(again, "atLatestAt")))
                            .toList(),
                    list(document.path("cautions")).stream()
                            .map(caution -> text(caution, "text"))
                            .toList(),
                    list(document.path("notices")).stream()
                            .map(notice -> notice.stringValue(""))
                            .toList());
        }

        private Reason reason(JsonNode reason) {
            String kind = text(reason, "kind");
            boolean many = kind.equals("section") || kind.equals("total");
            return new Reason(
                    kind.equals("level") ? question(text(reason, "id")).orElse("") : "",
                    text(reason, "text"),
                    many ? reason.path("points").asString("") : "",
                    text(reason, "why"),
                    reason.path("counted").booleanValue(true));
        }

        /** The more an advice is for just this look, the earlier it stands: what holds always comes last. */
        private List<String> advice(String kind) {
            Map<String, Integer> breadth = look.edition().checklist().draft().advice().stream()
                    .collect(Collectors.toMap(
                            ChecklistDraft.Advice::id,
                            advice -> advice.when().always()
                                    ? Integer.MAX_VALUE
                                    : advice.when().outcomes().size()));
            return list(look.document().path("advice")).stream()
                    .filter(advice -> text(advice, "kind").equals(kind))
                    .sorted(Comparator.comparing(advice -> breadth.getOrDefault(text(advice, "id"), 0)))
                    .map(advice -> text(advice, "text"))
                    .toList();
        }

        private String label(String outcome) {
            return look.edition().checklist().draft().outcomes().stream()
                    .filter(each -> each.code().equals(outcome))
                    .findFirst()
                    .map(ChecklistDraft.Outcome::label)
                    .orElse(outcome);
        }

        /** @param field where the finding's id stands in each; empty where it is the id itself */
        private List<Ask> asks(JsonNode findings, String field) {
            return list(findings).stream()
                    .map(each -> field.isEmpty() ? each.stringValue("") : text(each, field))
                    .flatMap(id -> look.edition().checklist().findFinding(id).stream())
                    .map(finding -> new Ask(
                            Objects.requireNonNullElse(finding.question(), finding.id()),
                            Objects.requireNonNullElse(finding.help(), "")))
                    .toList();
        }

        private Optional<String> question(String finding) {
            return look.edition().checklist().findFinding(finding).map(ChecklistDraft.Finding::question);
        }

        private String moment(JsonNode in, String field) {
            String at = text(in, field);
            return at.isEmpty() ? "" : moment(Instant.parse(at));
        }

        private String moment(Instant at) {
            return Decision.moment(at, zone, locale);
        }

        private static String text(JsonNode in, String field) {
            return in.path(field).stringValue("");
        }

        private static List<JsonNode> list(JsonNode array) {
            List<JsonNode> items = new ArrayList<>();
            array.forEach(items::add);
            return items;
        }
    }
}
