package varanid.intake.scoring;

import java.util.List;
import java.util.Map;

/** "Only in animals of these attribute values." */
final class AttributeTest {

    /** For each attribute the set of values that pass; every bit where the attribute does not matter. */
    private final int[] allowed;

    AttributeTest(Checklist checklist, Map<String, List<String>> when) {
        allowed = new int[checklist.attributes.length];
        for (int a = 0; a < allowed.length; a++) {
            AttributeRules attribute = checklist.attributes[a];
            List<String> values = when.get(attribute.draft.id());
            if (values == null) {
                allowed[a] = -1;
            } else {
                for (String value : values) {
                    allowed[a] |= 1 << attribute.indexOf(value);
                }
            }
        }
    }

    boolean holds(int[] values) {
        for (int a = 0; a < allowed.length; a++) {
            if ((allowed[a] & 1 << values[a]) == 0) {
                return false;
            }
        }
        return true;
    }
}
