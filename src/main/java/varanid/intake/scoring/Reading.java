package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What the answers of a look may stand for: for each finding the set of levels that are still possible.
 *
 * <p>A plain answer leaves one level. A missing or not-observed one leaves all; a masking condition adds every worse
 * level; an explaining one adds the milder levels. A measured finding whose bands depend on another finding (its
 * driver) has one such set for each level of the driver.
 */
final class Reading {

    final Checklist checklist;
    final Circumstances circumstances;
    /** The possible levels; for a finding with a driver, those of the driver level now being looked at. */
    final int[] possible;
    /** The levels as they were seen, explanations set aside; the mildest possible where nothing was seen. */
    final int[] seen;

    final Status[] status;
    final @Nullable Answer[] answers;
    final Circumstances.@Nullable Excuse[] excuses;
    boolean anyExcuse;
    /** Levels that an implication took away from a finding; they stay away whatever its driver is. */
    private final int[] ruledOut;

    enum Status {
        MISSING,
        NOT_OBSERVED,
        NOT_YET_DUE,
        SEEN,
        IMPLIED
    }

    private Reading(Checklist checklist, Circumstances circumstances) {
        this.checklist = checklist;
        this.circumstances = circumstances;
        int count = checklist.findings.length;
        possible = new int[count];
        seen = new int[count];
        status = new Status[count];
        answers = new Answer[count];
        excuses = new Circumstances.Excuse[count];
        ruledOut = new int[count];
    }

    /** Reads the answers; faults are added to the list and leave the finding as if it were missing. */
    static Reading of(Circumstances circumstances, Map<String, Answer> answers, List<Fault> faults) {
        Checklist checklist = circumstances.checklist;
        Reading reading = new Reading(checklist, circumstances);
        for (Map.Entry<String, Answer> entry : answers.entrySet()) {
            int f = checklist.indexOf(entry.getKey());
            if (f < 0) {
                faults.add(new Fault(
                        pointer(entry.getKey()),
                        "the checklist has no finding '" + entry.getKey() + "'",
                        "a finding id of " + checklist.draft().id() + " version "
                                + checklist.draft().version()));
            } else {
                reading.answers[f] = entry.getValue();
            }
        }
        for (FindingRules finding : checklist.findings) {
            reading.read(finding, faults);
        }
        reading.applyImplications(faults);
        for (FindingRules finding : checklist.findings) {
            if (finding.driver < 0) {
                reading.noteSeen(finding);
            }
        }
        return reading;
    }

    private void read(FindingRules finding, List<Fault> faults) {
        int f = finding.index;
        Answer answer = answers[f];
        status[f] = Status.MISSING;
        if (answer instanceof Answer.Seen it) {
            int level = finding.levelIndex(it.level());
            if (finding.isMeasured() || level < 0) {
                faults.add(refusedLevel(finding, it));
            } else {
                status[f] = Status.SEEN;
                possible[f] = 1 << level;
                excuseAndMask(finding);
                return;
            }
        } else if (answer instanceof Answer.Measured it) {
            if (finding.isMeasured()) {
                List<Fault> ofThis = MeasureFaults.of(finding, it);
                if (ofThis.isEmpty()) {
                    status[f] = Status.SEEN;
                } else {
                    faults.addAll(ofThis);
                }
            } else {
                faults.add(new Fault(
                        pointer(finding.draft.id()), "is a number", "one of " + String.join(", ", finding.levels)));
            }
        } else if (answer == Answer.NotObserved.NOT_OBSERVED) {
            status[f] = Status.NOT_OBSERVED;
        } else if (answer == Answer.NotYetDue.NOT_YET_DUE) {
            if (finding.draft.notYetDue() == null) {
                faults.add(new Fault(
                        pointer(finding.draft.id()),
                        "cannot be put off to a later day",
                        "a level, or not-observed if it could not be seen"));
            } else {
                status[f] = Status.NOT_YET_DUE;
                possible[f] = 1;
                return;
            }
        }
        if (finding.driver < 0) {
            possible[f] = possibleGiven(finding, -1);
            if (status[f] == Status.SEEN) {
                excuseAndMask(finding);
            }
        }
    }

    /** The levels that a measured or unanswered finding may have, given the level of its driver. */
    private int possibleGiven(FindingRules finding, int driverLevel) {
        if (!finding.isMeasured()) {
            return finding.all;
        }
        Answer.Measured measured =
                status[finding.index] == Status.SEEN ? (Answer.Measured) answers[finding.index] : null;
        BigDecimal companion = measured == null ? null : measured.companion();
        int set = 0;
        for (CaseRules it : finding.cases) {
            if (!it.isFor(circumstances.attributeValues, driverLevel)) {
                continue;
            }
            boolean unknownCompanion = companion == null
                    && Objects.requireNonNull(finding.draft.measure()).companion() != null;
            if (measured == null || unknownCompanion) {
                set |= it.allLevels();
                if (!it.looksAtCompanion()) {
                    break;
                }
            } else if (it.takesCompanion(companion)) {
                return it.levelsBetween(finding.toStep(measured.low()), finding.toStep(measured.high()));
            }
        }
        return set;
    }

    /** Widens the possible levels of a seen finding by what the conditions of the look say. */
    private void excuseAndMask(FindingRules finding) {
        if (!circumstances.anyCondition) {
            return;
        }
        int f = finding.index;
        int asSeen = possible[f];
        int reach = finding.isMeasured() ? reachable(finding) : finding.all;
        for (int l = 0; l < finding.levels.length; l++) {
            if ((asSeen & 1 << l) != 0 && l > 0) {
                Circumstances.Excuse excuse = circumstances.findExcuse(finding, l);
                if (excuse != null && Integer.bitCount(asSeen) == 1) {
                    excuses[f] = excuse;
                    anyExcuse = true;
                    possible[f] |= finding.orMilder(l) & reach;
                }
            }
        }
        if (circumstances.masksOf(finding).length > 0) {
            for (int l = 0; l < finding.levels.length; l++) {
                if ((asSeen & 1 << l) != 0) {
                    possible[f] |= finding.orWorse(l) & reach;
                }
            }
            for (byte worst : finding.worstOf(reach)) {
                possible[f] |= 1 << worst;
            }
        }
    }

    private int reachable(FindingRules finding) {
        int set = 0;
        for (CaseRules it : finding.cases) {
            if (it.isFor(circumstances.attributeValues, -1)) {
                set |= it.allLevels();
                if (!it.looksAtCompanion()) {
                    break;
                }
            }
        }
        return set;
    }

    private void applyImplications(List<Fault> faults) {
        boolean changed = checklist.implications.length > 0;
        while (changed) {
            changed = false;
            for (ImplicationRules implication : checklist.implications) {
                changed |= fillIn(implication, faults) | ruleOut(implication);
            }
        }
    }

    /** A reassuring answer that nothing masks fills in the missing one, or contradicts a worrying one. */
    private boolean fillIn(ImplicationRules implication, List<Fault> faults) {
        int from = implication.finding;
        int to = implication.then;
        boolean certain = (status[from] == Status.SEEN || status[from] == Status.IMPLIED) && possible[from] == 1;
        if (!certain) {
            return false;
        }
        if (status[to] == Status.MISSING && (possible[to] & 1) != 0) {
            status[to] = Status.IMPLIED;
            possible[to] = 1;
            return true;
        }
        if (answers[to] instanceof Answer.Seen it && checklist.findings[to].levelIndex(it.level()) > 0) {
            Fault clash = new Fault(
                    pointer(implication.draft.then()),
                    "'" + it.level() + "' contradicts " + implication.draft.finding() + " '" + implication.draft.level()
                            + "'",
                    implication.draft.is() + ", or another answer to " + implication.draft.finding());
            if (!faults.contains(clash)) {
                faults.add(clash);
            }
        }
        return false;
    }

    /** Where the second is certainly worrying, the first cannot be reassuring. */
    private boolean ruleOut(ImplicationRules implication) {
        int from = implication.finding;
        boolean worrying = status[implication.then] == Status.SEEN && (possible[implication.then] & 1) == 0;
        if (worrying && (possible[from] & 1) != 0 && possible[from] != 1) {
            possible[from] &= ~1;
            ruledOut[from] |= 1;
            return true;
        }
        return false;
    }

    private void noteSeen(FindingRules finding) {
        int f = finding.index;
        seen[f] = finding.mildestOf(possible[f])[0];
        if (excuses[f] != null && answers[f] instanceof Answer.Seen it) {
            seen[f] = finding.levelIndex(it.level());
        } else if (excuses[f] != null && answers[f] instanceof Answer.Measured) {
            seen[f] = finding.levelIndex(excuses[f].terms().level());
        }
    }

    /** Fixes the level of a driver, and with it the possible levels of every finding that depends on it. */
    void drive(int driver, int level) {
        for (FindingRules finding : checklist.findings) {
            if (finding.driver == driver && status[finding.index] != Status.NOT_YET_DUE) {
                possible[finding.index] = possibleGiven(finding, level) & ~ruledOut[finding.index];
                noteSeen(finding);
            }
        }
    }

    boolean isUnknown(int f) {
        return status[f] == Status.MISSING || status[f] == Status.NOT_OBSERVED;
    }

    /** Narrows a finding to its mildest possible level, as a reassuring look would. */
    Reading reassured(int f) {
        Reading copy = new Reading(checklist, circumstances);
        System.arraycopy(possible, 0, copy.possible, 0, possible.length);
        System.arraycopy(seen, 0, copy.seen, 0, seen.length);
        System.arraycopy(status, 0, copy.status, 0, status.length);
        System.arraycopy(answers, 0, copy.answers, 0, answers.length);
        System.arraycopy(excuses, 0, copy.excuses, 0, excuses.length);
        System.arraycopy(ruledOut, 0, copy.ruledOut, 0, ruledOut.length);
        copy.anyExcuse = anyExcuse;
        copy.reassure(f);
        return copy;
    }

    private void reassure(int f) {
        FindingRules finding = checklist.findings[f];
        byte[] mildest = finding.mildestOf(possible[f]);
        possible[f] = 1 << mildest[0];
        seen[f] = mildest[0];
        status[f] = Status.SEEN;
        answers[f] = Answer.seen(finding.levels[mildest[0]]);
        excuses[f] = null;
        applyImplications(new ArrayList<>());
    }

    static String pointer(String finding) {
        return "/answers/" + finding.replace("~", "~0").replace("/", "~1");
    }

    private Fault refusedLevel(FindingRules finding, Answer.Seen answer) {
        String pointer = pointer(finding.draft.id());
        if (finding.isMeasured()) {
            ChecklistDraft.Measure measure = Objects.requireNonNull(finding.draft.measure());
            return new Fault(
                    pointer,
                    "'" + answer.level() + "' is not a number",
                    "a number from " + measure.min().toPlainString() + " to "
                            + measure.max().toPlainString() + " in " + measure.unit() + ", or not-observed");
        }
        return new Fault(
                pointer,
                "'" + answer.level() + "' is not a level of " + finding.draft.id(),
                "one of " + String.join(", ", finding.levels) + ", or not-observed");
    }
}
