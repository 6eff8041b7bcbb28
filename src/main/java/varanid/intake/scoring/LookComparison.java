package varanid.intake.scoring;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What changed from one look to a later one by the same checklist, or by another version of it.
 *
 * <p>Answers are compared by what they stand for. An excused answer counts as it was seen; a masked one stands for
 * everything worse as well, and one that looks well under a mask stands for nothing. What is unknown now never counts
 * as better.
 *
 * @param changes the findings that were known in at least one of the two, in the order the later checklist asks
 * @param stillUnknown the findings that were known in neither
 * @param notComparable findings that were known, of which the other version knows the finding or a level of it
 *     otherwise or not at all
 */
public record LookComparison(List<Change> changes, List<String> stillUnknown, List<NotComparable> notComparable) {

    public LookComparison {
        changes = List.copyOf(changes);
        stillUnknown = List.copyOf(stillUnknown);
        notComparable = List.copyOf(notComparable);
    }

    public enum Kind {
        /** Was reassuring, and is not. */
        NEW,
        /** Further along a chain. */
        WORSE,
        /** Of another kind: neither level is on a chain with the other. */
        CHANGED,
        /** Was unknown, and is known: it may have been there before. */
        FIRST_SEEN,
        /** Was known, and is unknown: it may still be there. */
        NO_LONGER_SEEN,
        /** Known less than exactly, so that it may have gone either way. */
        CANNOT_TELL,
        /** Less far along a chain. */
        BETTER,
        /** Was not reassuring, and is. */
        GONE,
        SAME
    }

    /**
     * One finding in both looks.
     *
     * @param before nothing where it was unknown
     * @param after nothing where it is unknown
     */
    public record Change(
            ChecklistDraft.Finding finding,
            Kind kind,
            LookReading.@Nullable State before,
            LookReading.@Nullable State after) {

        /** Whether there is now something other than reassuring that was not known to be there, or was milder. */
        public boolean isNewOrWorse() {
            return kind == Kind.NEW
                    || kind == Kind.WORSE
                    || (kind == Kind.CHANGED || kind == Kind.FIRST_SEEN) && after != null && after.isSign();
        }

        /** Whether something other than reassuring was there, and nobody could say this time. */
        public boolean isLostSign() {
            return kind == Kind.NO_LONGER_SEEN && before != null && before.isSign();
        }
    }

    public record NotComparable(String finding, String why) {}

    /** A look with none before it: everything is seen for the first time. */
    public static LookComparison first(LookReading only) {
        List<Change> changes = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        for (LookReading.State state : only.states()) {
            if (state.isEvidence()) {
                changes.add(new Change(state.finding(), Kind.FIRST_SEEN, null, state));
            } else {
                unknown.add(state.finding().id());
            }
        }
        return new LookComparison(changes, unknown, List.of());
    }

    /** @throws IllegalArgumentException where the two are not by the same checklist, whatever its version */
    public static LookComparison of(LookReading before, LookReading after) {
        if (!before.checklist().draft().id().equals(after.checklist().draft().id())) {
            throw new IllegalArgumentException("the two looks are by different checklists");
        }
        List<Change> changes = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        List<NotComparable> notComparable = new ArrayList<>();
        for (LookReading.State now : after.states()) {
            String id = now.finding().id();
            Optional<LookReading.State> then = before.find(id);
            boolean wasKnown = then.isPresent() && then.get().isEvidence();
            if (!wasKnown && !now.isEvidence()) {
                unknown.add(id);
            } else if (then.isEmpty()) {
                notComparable.add(new NotComparable(id, "the earlier version of the checklist does not ask for it"));
            } else {
                compare(before, after, then.get(), now, changes, notComparable);
            }
        }
        for (LookReading.State then : before.states()) {
            if (then.isEvidence() && after.find(then.finding().id()).isEmpty()) {
                notComparable.add(new NotComparable(
                        then.finding().id(), "the later version of the checklist no longer asks for it"));
            }
        }
        return new LookComparison(changes, unknown, notComparable);
    }

    private static void compare(
            LookReading before,
            LookReading after,
            LookReading.State then,
            LookReading.State now,
            List<Change> changes,
            List<NotComparable> notComparable) {
        FindingRules old = before.rules(then.finding().id());
        FindingRules young = after.rules(now.finding().id());
        if (!then.isEvidence()) {
            changes.add(new Change(now.finding(), Kind.FIRST_SEEN, null, now));
            return;
        }
        if (!now.isEvidence()) {
            changes.add(new Change(now.finding(), Kind.NO_LONGER_SEEN, then, null));
            return;
        }
        Set<String> levels = new HashSet<>(then.possible());
        levels.addAll(now.possible());
        for (String level : levels) {
            if (old.levelIndex(level) < 0 || young.levelIndex(level) < 0) {
                notComparable.add(new NotComparable(
                        now.finding().id(), "only one of the two versions of the checklist has the level " + level));
                return;
            }
        }
        Kind kind = kind(young, then.possible(), now.possible());
        if (kind != kind(old, then.possible(), now.possible())) {
            notComparable.add(new NotComparable(
                    now.finding().id(), "the two versions of the checklist put its levels in different orders"));
            return;
        }
        changes.add(new Change(now.finding(), kind, then, now));
    }

    private static Kind kind(FindingRules finding, Set<String> before, Set<String> after) {
        if (before.equals(after)) {
            return Kind.SAME;
        }
        boolean worse = true;
        boolean better = true;
        for (String from : before) {
            for (String to : after) {
                int a = finding.levelIndex(from);
                int b = finding.levelIndex(to);
                worse &= a != b && (finding.orWorse(a) & 1 << b) != 0;
                better &= a != b && (finding.orMilder(a) & 1 << b) != 0;
            }
        }
        String reassuring = finding.levels[0];
        if (worse) {
            return before.equals(Set.of(reassuring)) ? Kind.NEW : Kind.WORSE;
        }
        if (better) {
            return after.equals(Set.of(reassuring)) ? Kind.GONE : Kind.BETTER;
        }
        return before.size() == 1 && after.size() == 1 ? Kind.CHANGED : Kind.CANNOT_TELL;
    }
}
