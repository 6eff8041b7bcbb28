package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The bands of a measured finding in the animals and circumstances that they are for. */
final class CaseRules {

    /** The other finding this case depends on, or -1, and the set of its levels for which the case holds. */
    final int driver;

    final int driverLevels;
    private final AttributeTest attributes;
    private final @Nullable BigDecimal companionUpTo;
    private final BigDecimal[] starts;
    private final long[] startSteps;
    private final int[] levelFrom;
    private final int allLevels;

    CaseRules(Checklist checklist, FindingRules owner, ChecklistDraft.Case draft) {
        attributes = new AttributeTest(checklist, draft.when());
        int driverFound = -1;
        int levels = -1;
        for (Map.Entry<String, List<String>> when : draft.when().entrySet()) {
            int other = checklist.indexOf(when.getKey());
            if (other >= 0) {
                driverFound = other;
                levels = 0;
                List<ChecklistDraft.Level> of =
                        checklist.draft().findings().get(other).levels();
                for (int l = 0; l < of.size(); l++) {
                    if (when.getValue().contains(of.get(l).code())) {
                        levels |= 1 << l;
                    }
                }
            }
        }
        driver = driverFound;
        driverLevels = levels;
        companionUpTo = draft.companionUpTo();
        starts = draft.from().stream().map(ChecklistDraft.Start::at).toArray(BigDecimal[]::new);
        startSteps = Arrays.stream(starts).mapToLong(owner::inSteps).toArray();
        levelFrom = draft.from().stream()
                .mapToInt(start -> owner.levelIndex(start.level()))
                .toArray();
        int set = 0;
        for (int level : levelFrom) {
            set |= 1 << level;
        }
        allLevels = set;
    }

    boolean isFor(int[] attributeValues, int driverLevel) {
        return attributes.holds(attributeValues)
                && (driver < 0 || driverLevel >= 0 && (driverLevels & 1 << driverLevel) != 0);
    }

    /** Whether a companion of this size belongs here; cases are tried in order, so the first that says yes has it. */
    boolean takesCompanion(@Nullable BigDecimal companion) {
        return companionUpTo == null || companion != null && companion.compareTo(companionUpTo) <= 0;
    }

    boolean looksAtCompanion() {
        return companionUpTo != null;
    }

    BigDecimal[] starts() {
        return starts;
    }

    /** The level of a number, given in steps of the measure. */
    int levelOf(long steps) {
        int level = levelFrom[0];
        for (int i = 1; i < startSteps.length && steps >= startSteps[i]; i++) {
            level = levelFrom[i];
        }
        return level;
    }

    /** The set of levels that an interval may fall in. */
    int levelsBetween(long low, long high) {
        int set = 1 << levelOf(low);
        for (int i = 1; i < startSteps.length; i++) {
            if (startSteps[i] > low && startSteps[i] <= high) {
                set |= 1 << levelFrom[i];
            }
        }
        return set;
    }

    int allLevels() {
        return allLevels;
    }

    int[] levelsInOrder() {
        return levelFrom.clone();
    }
}
