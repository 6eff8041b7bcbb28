package varanid.intake.scoring;

import java.util.List;

/** The values of one attribute, numbered, and what each counts as. */
final class AttributeRules {

    final ChecklistDraft.Attribute draft;
    private final int[] countsAs;
    final int ifAbsent;

    AttributeRules(ChecklistDraft.Attribute draft) {
        this.draft = draft;
        List<ChecklistDraft.Attribute.Value> values = draft.values();
        countsAs = new int[values.size()];
        for (int i = 0; i < countsAs.length; i++) {
            String as = values.get(i).countsAs();
            countsAs[i] = as == null ? i : indexOf(as);
        }
        ifAbsent = draft.ifAbsent() == null ? -1 : indexOf(draft.ifAbsent());
    }

    /** Index of a value, or -1. */
    int indexOf(String code) {
        for (int i = 0; i < draft.values().size(); i++) {
            if (draft.values().get(i).code().equals(code)) {
                return i;
            }
        }
        return -1;
    }

    int countsAs(int value) {
        return countsAs[value];
    }
}
