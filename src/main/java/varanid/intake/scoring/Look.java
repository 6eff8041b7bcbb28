package varanid.intake.scoring;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/**
 * One person's look at one animal: what was answered, about whom, under which conditions.
 *
 * @param answers finding id to answer; a finding that is not a key is missing
 * @param attributes attribute id to value code; an attribute that is not a key takes the checklist's value for that
 * @param conditions condition ids that held during the look
 * @param explainedBefore findings for which an explanation has already been used up: it no longer excuses them
 */
public record Look(
        Map<String, Answer> answers,
        Map<String, String> attributes,
        Set<String> conditions,
        Set<String> explainedBefore) {

    public Look {
        answers = Map.copyOf(answers);
        attributes = Map.copyOf(attributes);
        // In the order given, so that a fault can say which one it means.
        conditions = Collections.unmodifiableSet(new LinkedHashSet<>(conditions));
        explainedBefore = Set.copyOf(explainedBefore);
    }

    public Look(Map<String, Answer> answers, Map<String, String> attributes, Set<String> conditions) {
        this(answers, attributes, conditions, Set.of());
    }
}
