package varanid.intake.scoring;

/** Nobody knows what the animal was kept with: by its origin, that alone may be reason to keep it apart. */
final class UnknownExposure {

    private UnknownExposure() {}

    static int routes(Reading reading) {
        Checklist checklist = reading.checklist;
        ChecklistDraft.Isolation isolation = checklist.draft().isolation();
        if (isolation == null || isolation.unknownExposure() == null) {
            return 0;
        }
        ChecklistDraft.Isolation.UnknownExposure rule = isolation.unknownExposure();
        for (int a = 0; a < checklist.attributes.length; a++) {
            AttributeRules attribute = checklist.attributes[a];
            if (attribute.draft.id().equals(rule.attribute())) {
                String value = attribute
                        .draft
                        .values()
                        .get(reading.circumstances.attributeValues[a])
                        .code();
                if (!rule.values().contains(value)) {
                    return 0;
                }
            }
        }
        for (String finding : rule.findings()) {
            if (Integer.bitCount(reading.possible[checklist.indexOf(finding)]) > 1) {
                return 1 << FindingRules.routeIndex(isolation, rule.route());
            }
        }
        return 0;
    }
}
