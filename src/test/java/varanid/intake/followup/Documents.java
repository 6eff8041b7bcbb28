package varanid.intake.followup;

import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import tools.jackson.databind.JsonNode;

/** What a person reads of one animal: plan, trend and release list, line by line as the service words them. */
final class Documents {

    private final StringBuilder page = new StringBuilder(System.lineSeparator());

    private Documents() {}

    static String of(Story story, String animal) {
        Documents documents = new Documents();
        documents.plan(story.quarantine(animal).json());
        documents.trend(story.trend(animal).json());
        documents.release(story.review(animal).json());
        return documents.page.toString();
    }

    private void plan(JsonNode plan) {
        line("PLAN of " + text(plan, "name") + ", " + text(plan, "asOf") + ", room " + text(plan, "roomName"));
        line("  " + plan.at("/clock/inWords").asString());
        line("  isolation " + text(plan, "isolation") + "; in the rounds: "
                + plan.at("/workPlace/text").asString() + "; urgency of the last look: " + text(plan, "urgency"));
        plan.at("/plan/hygiene").forEach(each -> line("  every day: " + text(each, "text")));
        plan.at("/plan/tools").forEach(each -> line("  tools: " + text(each, "text")));
        plan.get("ask").forEach(each -> line("  ask: " + text(each, "text")));
        plan.get("next")
                .forEach(task -> line("  " + text(task, "state") + ", " + text(task, "due") + " to "
                        + text(task, "latest") + ": " + text(task, "title") + ". " + text(task, "instruction")));
    }

    private void trend(JsonNode trend) {
        line("TREND, " + text(trend, "asOf"));
        line("  latest: " + trend.get("latest"));
        trend.get("changes").forEach(each -> line("  " + text(each, "text")));
        if (trend.has("slope")) {
            line("  " + trend.at("/slope/text").asString());
        }
        trend.get("thresholds")
                .forEach(each -> line("  " + text(each, "state") + ": " + text(each, "text")
                        + StreamSupport.stream(each.get("why").spliterator(), false)
                                .map(why -> " " + text(why, "text"))
                                .collect(Collectors.joining())));
        trend.get("whatToDo").forEach(each -> line("  to do: " + each.asString()));
    }

    private void release(JsonNode review) {
        line("RELEASE LIST, " + text(review, "asOf"));
        review.get("conditions").forEach(each -> {
            line("  " + text(each, "state") + ": " + text(each, "id")
                    + (each.has("label") ? " - " + text(each, "label") : ""));
            each.get("evidence").forEach(evidence -> line("      " + evidence.asString()));
            if (each.has("missing")) {
                line("      missing: " + text(each, "missing"));
            }
            if (each.has("findOut")) {
                line("      find out: " + text(each, "findOut"));
            }
        });
        line("  " + text(review, "caution"));
    }

    private static String text(JsonNode object, String member) {
        return object.path(member).asString("");
    }

    private void line(String text) {
        page.append(text).append(System.lineSeparator());
    }
}
