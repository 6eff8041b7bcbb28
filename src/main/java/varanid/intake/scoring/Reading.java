package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
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
 *
 * <p>An implication fills in a missing answer, never a not-observed one. The other way round, what was seen to be
 * worrying, excused or not, rules out the reassuring level of everything that would imply the opposite.
 */
final class Reading {

    final Checklist checklist;
    final Circumstances circumstances;
    /** The possible levels; for a finding with a driver, under any level that the driver may have. */
    int[] possible;
    /** The levels that its own answer leaves to a finding without a driver, the other answers apart. */
    private final int[] own;
    /** The levels as they were seen, explanations set aside; the mildest possible where nothing was seen. */
    final int[] seen;

    private final Map<String, Answer> answers;
    /** One of the constants below for each finding. */
    private final byte[] status;

    final Circumstances.@Nullable Excuse[] excuses;
    boolean anyExcuse;
    /** Whether supposed answers contradict the others. */
    boolean contradictory;
    /** For each finding the level to take instead of its answer, or -1; null where nothing is supposed. */
    private int @Nullable [] supposed;
    /** Findings with a driver that turned out as mild as their driver lets them be; null where there are none. */
    private boolean @Nullable [] asMildAsCanBe;

    enum Status {
        MISSING,
        NOT_OBSERVED,
        NOT_YET_DUE,
        SEEN
    }

    // Kept as bytes: this is read and written once for each finding of each look.
    private static final byte MISSING = (byte) Status.MISSING.ordinal();
    private static final byte NOT_OBSERVED = (byte) Status.NOT_OBSERVED.ordinal();
    private static final byte NOT_YET_DUE = (byte) Status.NOT_YET_DUE.ordinal();
    private static final byte SEEN = (byte) Status.SEEN.ordinal();

    private Reading(Circumstances circumstances, Map<String, Answer> answers) {
        checklist = circumstances.checklist;
        this.circumstances = circumstances;
        this.answers = answers;
        int count = checklist.findings.length;
        own = new int[count];
        possible = own;
        status = new byte[count];
        seen = new int[count];
        excuses = circumstances.anyCondition ? new Circumstances.Excuse[count] : checklist.noExcuses;
    }

    private Reading(Reading from) {
        checklist = from.checklist;
        circumstances = from.circumstances;
        answers = from.answers;
        status = from.status.clone();
        own = from.own.clone();
        possible = own;
        seen = from.seen.clone();
        excuses = from.anyExcuse ? from.excuses.clone() : from.excuses;
        anyExcuse = from.anyExcuse;
        supposed = from.supposed;
        asMildAsCanBe = from.asMildAsCanBe;
    }

    /** Reads the answers; faults are added to the list and leave the finding as if it were missing. */
    static Reading of(Circumstances circumstances, Map<String, Answer> answers, List<Fault> faults) {
        Reading reading = new Reading(circumstances, answers);
        int known = reading.readAll(faults);
        if (known < answers.size()) {
            reading.refuseUnknown(faults);
        }
        return reading;
    }

    /** Reads every finding, and says for how many of them there was an answer. */
    private int readAll(List<Fault> faults) {
        int known = 0;
        for (FindingRules finding : checklist.findings) {
            int f = finding.index;
            Answer answer = answers.get(finding.id);
            int level = supposed == null || supposed[f] < 0 ? levelSeen(finding, answer) : supposed[f];
            known += answer == null ? 0 : 1;
            if (level >= 0) {
                seen[f] = level;
                own[f] = 1 << level;
                status[f] = SEEN;
                if (circumstances.anyCondition && finding.driver < 0) {
                    excuseAndMask(finding);
                }
            } else if (answer == null && !finding.isMeasured()) {
                own[f] = finding.all;
            } else {
                readOther(finding, answer, faults);
            }
        }
        combine(faults);
        return known;
    }

    private void refuseUnknown(List<Fault> faults) {
        answers.keySet().stream()
                .filter(id -> checklist.indexOf(id) < 0)
                .sorted()
                .forEach(id -> faults.add(new Fault(
                        pointer(id),
                        "the checklist has no finding '" + id + "'",
                        "a finding id of " + checklist.draft().id() + " version "
                                + checklist.draft().version())));
    }

    /** What nearly every answer is: a level, by its code. Or -1. */
    private static int levelSeen(FindingRules finding, @Nullable Answer answer) {
        return answer instanceof Answer.Seen it && !finding.isMeasured() ? finding.levelIndex(it.level()) : -1;
    }

    private void readOther(FindingRules finding, @Nullable Answer answer, List<Fault> faults) {
        int f = finding.index;
        if (answer instanceof Answer.Seen it) {
            faults.add(refusedLevel(finding, it));
        } else if (answer instanceof Answer.Measured it) {
            List<Fault> ofThis = finding.isMeasured() ? MeasureFaults.of(finding, it) : List.of(refusedNumber(finding));
            faults.addAll(ofThis);
            status[f] = ofThis.isEmpty() ? SEEN : MISSING;
        } else if (answer == Answer.NotYetDue.NOT_YET_DUE) {
            if (finding.draft.notYetDue() != null) {
                status[f] = NOT_YET_DUE;
                own[f] = 1;
                return;
            }
            faults.add(refusedDelay(finding));
        } else if (answer != null) {
            status[f] = NOT_OBSERVED;
        }
        if (!finding.isMeasured()) {
            own[f] = finding.all;
        } else if (finding.driver < 0) {
            own[f] = possibleGiven(finding, -1);
            seen[f] = finding.mildestOf(own[f])[0];
            if (status[f] == SEEN) {
                excuseAndMask(finding);
            }
        }
    }

    Status status(int f) {
        return Status.values()[status[f]];
    }

    boolean isSeen(int f) {
        return status[f] == SEEN;
    }

    /** The levels that a measured or unanswered finding may have, given the level of its driver. */
    private int possibleGiven(FindingRules finding, int driverLevel) {
        if (!finding.isMeasured()) {
            return finding.all;
        }
        Answer.Measured measured =
                status[finding.index] == SEEN && answers.get(finding.id) instanceof Answer.Measured it ? it : null;
        BigDecimal companion = measured == null ? null : measured.companion();
        boolean unknownCompanion = companion == null
                && Objects.requireNonNull(finding.draft.measure()).companion() != null;
        if (measured == null || unknownCompanion) {
            return finding.reachable(circumstances.attributeValues, driverLevel);
        }
        for (CaseRules bands : finding.cases) {
            if (bands.isFor(circumstances.attributeValues, driverLevel) && bands.takesCompanion(companion)) {
                long low = finding.inSteps(measured.low());
                return bands.levelsBetween(low, measured.isExact() ? low : finding.inSteps(measured.high()));
            }
        }
        throw new IllegalStateException(finding.draft.id() + " has no band case for this animal");
    }

    /** The possible levels of a finding that has a driver, given the level of the driver. */
    int possibleWith(FindingRules finding, int driverLevel) {
        int f = finding.index;
        if (status[f] == NOT_YET_DUE) {
            return 1;
        }
        if (supposed != null && supposed[f] >= 0) {
            return 1 << supposed[f];
        }
        int set = possibleGiven(finding, driverLevel);
        return asMildAsCanBe != null && asMildAsCanBe[f] ? 1 << finding.mildestOf(set)[0] : set;
    }

    /** Widens the possible levels of a seen finding by what the conditions of the look say. */
    private void excuseAndMask(FindingRules finding) {
        if (!circumstances.anyCondition) {
            return;
        }
        int f = finding.index;
        int asSeen = own[f];
        int reach = finding.isMeasured() ? finding.reachable(circumstances.attributeValues, -1) : finding.all;
        if (Integer.bitCount(asSeen) == 1) {
            int level = Integer.numberOfTrailingZeros(asSeen);
            Circumstances.Excuse excuse = circumstances.findExcuse(finding, level);
            if (excuse != null) {
                excuses[f] = excuse;
                anyExcuse = true;
                own[f] |= finding.orMilder(level) & reach;
            }
        }
        if (circumstances.isMasked(finding)) {
            for (int l = 0; l < finding.levels.length; l++) {
                if ((asSeen & 1 << l) != 0) {
                    own[f] |= finding.orWorse(l) & reach;
                }
            }
            for (byte worst : finding.worstOf(reach)) {
                own[f] |= 1 << worst;
            }
        }
    }

    /** From what each answer allows by itself to what is possible beside the other answers. */
    private void combine(List<Fault> faults) {
        possible = own;
        // One pass is enough: nothing that is implied implies anything itself.
        for (ImplicationRules implication : checklist.implications) {
            int from = implication.finding;
            int to = implication.then;
            boolean seenWorrying = seen[to] > 0 && isSeen(to);
            boolean reassuring = own[from] == 1 && isSeen(from);
            if (reassuring && seenWorrying) {
                clash(implication, faults);
            } else if (reassuring && status[to] == MISSING) {
                narrow(to, 1);
            } else if (seenWorrying && own[from] != 1) {
                narrow(from, possible[from] & ~1);
            }
        }
        for (FindingRules finding : checklist.driven) {
            int all = 0;
            for (int l = 0; l < checklist.findings[finding.driver].levels.length; l++) {
                if ((possible[finding.driver] & 1 << l) != 0) {
                    all |= possibleWith(finding, l);
                }
            }
            narrow(finding.index, all);
            seen[finding.index] = finding.mildestOf(all)[0];
        }
    }

    /** Copied only once something differs: in most looks nothing does. */
    private void narrow(int f, int set) {
        if (possible == own) {
            possible = own.clone();
        }
        possible[f] = set;
    }

    private void clash(ImplicationRules implication, List<Fault> faults) {
        FindingRules then = checklist.findings[implication.then];
        Fault clash = new Fault(
                pointer(then.draft.id()),
                "'" + then.levels[seen[then.index]] + "' contradicts " + implication.draft.finding() + " '"
                        + implication.draft.level() + "'",
                implication.draft.is() + ", or another answer to " + implication.draft.finding());
        if (!faults.contains(clash)) {
            faults.add(clash);
        }
    }

    /** Whether a missing answer follows from another one. */
    boolean isImplied(int f) {
        return status[f] == MISSING && possible[f] == 1 && own[f] != 1;
    }

    /** Why a finding is not plainly known; null where it was plainly seen. */
    Result.Unknown.@Nullable Why whyUnknown(int f) {
        return switch (status(f)) {
            case MISSING -> isImplied(f) ? Result.Unknown.Why.IMPLIED : Result.Unknown.Why.MISSING;
            case NOT_OBSERVED -> Result.Unknown.Why.NOT_OBSERVED;
            case NOT_YET_DUE -> Result.Unknown.Why.NOT_YET_DUE;
            case SEEN -> {
                if (excuses[f] != null) {
                    yield Result.Unknown.Why.EXPLAINED;
                }
                if (Integer.bitCount(possible[f]) > 1) {
                    yield circumstances.isMasked(checklist.findings[f])
                            ? Result.Unknown.Why.MASKED
                            : Result.Unknown.Why.INTERVAL;
                }
                yield null;
            }
        };
    }

    /** Whether an answer is still to be had that would say more than what is known. */
    boolean isOpen(FindingRules finding) {
        int f = finding.index;
        if (Integer.bitCount(possible[f]) == 1) {
            return false;
        }
        if (finding.driver < 0 || !isSeen(f)) {
            return true;
        }
        for (int l = 0; l < checklist.findings[finding.driver].levels.length; l++) {
            if ((possible[finding.driver] & 1 << l) != 0 && Integer.bitCount(possibleWith(finding, l)) > 1) {
                return true;
            }
        }
        return false;
    }

    /** The same look, had these findings been seen at these levels, under the same conditions. */
    Reading supposing(int[] findings, int[] levels) {
        Reading other = new Reading(circumstances, answers);
        int[] taken = new int[checklist.findings.length];
        Arrays.fill(taken, -1);
        for (int i = 0; i < findings.length; i++) {
            taken[findings[i]] = levels[i];
        }
        other.supposed = taken;
        List<Fault> faults = new ArrayList<>(0);
        other.readAll(faults);
        other.contradictory = !faults.isEmpty();
        return other;
    }

    /** The same look without the benefit of any explanation: every answer counts as it was seen. */
    Reading unexcused() {
        Reading copy = new Reading(this);
        for (FindingRules finding : checklist.findings) {
            int f = finding.index;
            if (excuses[f] != null) {
                copy.own[f] &= ~finding.orMilder(seen[f]) | 1 << seen[f];
                copy.excuses[f] = null;
            }
        }
        copy.anyExcuse = false;
        copy.combine(new ArrayList<>(0));
        return copy;
    }

    /** Narrows a finding to its mildest possible level, as a reassuring look would. */
    Reading reassured(int f) {
        Reading copy = new Reading(this);
        FindingRules finding = checklist.findings[f];
        if (finding.driver >= 0) {
            boolean[] mild = asMildAsCanBe == null ? new boolean[checklist.findings.length] : asMildAsCanBe.clone();
            mild[f] = true;
            copy.asMildAsCanBe = mild;
        } else {
            int mildest = finding.mildestOf(possible[f])[0];
            copy.own[f] = 1 << mildest;
            copy.seen[f] = mildest;
            copy.status[f] = SEEN;
            if (anyExcuse) {
                copy.excuses[f] = null;
            }
        }
        copy.combine(new ArrayList<>(0));
        return copy;
    }

    static String pointer(String finding) {
        return "/answers/" + finding.replace("~", "~0").replace("/", "~1");
    }

    private static Fault refusedNumber(FindingRules finding) {
        return new Fault(pointer(finding.id), "is a number", "one of " + String.join(", ", finding.levels));
    }

    private static Fault refusedDelay(FindingRules finding) {
        return new Fault(
                pointer(finding.id),
                "cannot be put off to a later day",
                "a level, or not-observed if it could not be seen");
    }

    private static Fault refusedLevel(FindingRules finding, Answer.Seen answer) {
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
