package varanid.intake.scoring;

import java.util.Map;

/** Nobody knows what the animal was kept with: by its origin, that alone may be reason to keep it apart. */
final class UnknownExposure {

    private final int[] findings;
    private final int routes;
    private final AttributeTest attributes;

    UnknownExposure(
            Checklist checklist, ChecklistDraft.Isolation isolation, ChecklistDraft.Isolation.UnknownExposure draft) {
        findings = draft.findings().stream().mapToInt(checklist::indexOf).toArray();
        routes = 1 << FindingRules.routeIndex(isolation, draft.route());
        attributes = new AttributeTest(checklist, Map.of(draft.attribute(), draft.values()));
    }

    /** The route by which the animal is kept apart for this alone; 0 for none. */
    int routes(Reading reading) {
        if (attributes.holds(reading.circumstances.attributeValues)) {
            for (int finding : findings) {
                if (Integer.bitCount(reading.possible[finding]) > 1) {
                    return routes;
                }
            }
        }
        return 0;
    }
}
