package varanid.intake.scoring;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What every finding of one look stands for, without the score: which levels are still possible, and why more than one
 * is.
 */
public final class LookReading {

    private final Reading reading;
    private final List<State> states;

    LookReading(Reading reading) {
        this.reading = reading;
        List<State> all = new ArrayList<>();
        for (FindingRules finding : reading.checklist.findings) {
            all.add(state(finding));
        }
        states = List.copyOf(all);
    }

    /**
     * One finding.
     *
     * @param unknownBecause why it is not plainly known; nothing where it was plainly seen
     * @param level as it was seen, conditions set aside; of a number that may be several levels the mildest, and nothing
     *     where nothing was seen or implied
     * @param possible every level that it may be, explanations set aside: an excused answer counts as it was seen
     * @param mustSee whether it must be seen in such a look
     */
    public record State(
            ChecklistDraft.Finding finding,
            Result.Unknown.@Nullable Why unknownBecause,
            ChecklistDraft.@Nullable Level level,
            Set<String> possible,
            boolean mustSee) {

        public State {
            possible = Set.copyOf(possible);
        }

        /** Whether it is known for certain and counts fully: seen, or implied by what was seen. */
        public boolean isPlain() {
            return unknownBecause == null || unknownBecause == Result.Unknown.Why.IMPLIED;
        }

        /** Whether something other than the reassuring level was seen, excused or masked or not. */
        public boolean isSign() {
            return level != null && !level.equals(finding.levels().get(0));
        }

        /** Whether the answer says anything: what looks well under a condition that hides it says nothing. */
        boolean isEvidence() {
            return level != null && (unknownBecause != Result.Unknown.Why.MASKED || isSign());
        }
    }

    public Checklist checklist() {
        return reading.checklist;
    }

    /** @throws IndexOutOfBoundsException where the checklist has no such finding */
    FindingRules rules(String finding) {
        return reading.checklist.findings[reading.checklist.indexOf(finding)];
    }

    /** Every finding, in the order the checklist asks. */
    public List<State> states() {
        return states;
    }

    public Optional<State> find(String finding) {
        int f = reading.checklist.indexOf(finding);
        return f < 0 ? Optional.empty() : Optional.of(states.get(f));
    }

    /** What was seen to be other than reassuring. */
    public List<State> signs() {
        return states.stream().filter(State::isSign).toList();
    }

    /** The findings that must be seen and are not certain. */
    public List<State> unseenMustSee() {
        return states.stream()
                .filter(state -> state.mustSee() && state.possible().size() > 1)
                .toList();
    }

    /**
     * A sign that is there, the mildest worse level of it that would make the whole look more urgent, and how urgent.
     *
     * @param within how soon to act then, where the checklist says so
     */
    public record WouldRaise(
            ChecklistDraft.Finding finding,
            ChecklistDraft.Level level,
            String outcome,
            @Nullable String outcomeLabel,
            @Nullable Duration within) {}

    /** What to watch for: for each sign the next level on a chain that would raise the outcome, where there is one. */
    public List<WouldRaise> wouldRaise() {
        Bounds bounds = Bounds.of(reading);
        int now = new Decision(reading, bounds).recommendedIndex();
        WhatIf whatIf = new WhatIf(reading, bounds);
        List<WouldRaise> all = new ArrayList<>();
        for (FindingRules finding : reading.checklist.findings) {
            if (states.get(finding.index).isSign()) {
                for (int level : nextRaising(finding, whatIf, now)) {
                    int outcome = whatIf.lowestAfter(new WhatIf.Step(finding.index, level))
                            .outcome();
                    ChecklistDraft.Outcome it =
                            reading.checklist.draft().outcomes().get(outcome);
                    all.add(new WouldRaise(
                            finding.draft, finding.draft.levels().get(level), it.code(), it.label(), it.within()));
                }
            }
        }
        return all;
    }

    /** At most one level on each chain that the finding is on. */
    private Set<Integer> nextRaising(FindingRules finding, WhatIf whatIf, int now) {
        int seen = reading.seen[finding.index];
        Set<Integer> next = new LinkedHashSet<>();
        for (List<String> chain : finding.draft.chains()) {
            int at = chain.indexOf(finding.levels[seen]);
            for (int i = at + 1; at >= 0 && i < chain.size(); i++) {
                int level = finding.levelIndex(chain.get(i));
                WhatIf.Supposed then = whatIf.lowestAfter(new WhatIf.Step(finding.index, level));
                if (!then.contradictory() && then.outcome() > now) {
                    next.add(level);
                    break;
                }
            }
        }
        return next;
    }

    private State state(FindingRules finding) {
        int f = finding.index;
        int seen = reading.seen[f];
        Result.Unknown.Why why = reading.whyUnknown(f);
        boolean levelKnown = reading.isSeen(f) || why == Result.Unknown.Why.IMPLIED;
        int possible = reading.possible[f];
        if (why == Result.Unknown.Why.EXPLAINED) {
            possible = possible & ~finding.orMilder(seen) | 1 << seen;
        } else if (why == Result.Unknown.Why.NOT_YET_DUE) {
            possible = finding.all;
        }
        Set<String> codes = new LinkedHashSet<>();
        for (int l = 0; l < finding.levels.length; l++) {
            if ((possible & 1 << l) != 0) {
                codes.add(finding.levels[l]);
            }
        }
        return new State(
                finding.draft,
                why,
                levelKnown ? Objects.requireNonNull(finding.draft.levels().get(seen)) : null,
                codes,
                reading.circumstances.isMustSee(finding));
    }
}
