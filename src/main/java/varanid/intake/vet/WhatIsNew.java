package varanid.intake.vet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import varanid.intake.assessment.KeptLook;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.LookComparison;
import varanid.intake.scoring.LookReading;

/**
 * What one look shows that the writer of an answer could not have seen.
 *
 * @param look recorded after what the writer had seen
 * @param signs that count and are new, or worse than the writer had seen or said
 * @param moreUrgent whether the look as a whole is more urgent than the last one that the writer had seen, by more than
 *     what was not seen
 * @param adds whether it asks for anything beyond what the writer had seen: then the answer alone no longer holds
 */
record WhatIsNew(LookFacts look, List<KeptLook.Sign> signs, boolean moreUrgent, boolean adds) {

    WhatIsNew {
        signs = List.copyOf(signs);
    }

    /**
     * @param seen the last look by the same checklist that the writer had seen
     */
    static WhatIsNew in(LookFacts look, Optional<LookFacts> seen, VetAnswer answer) {
        LookComparison comparison = seen.map(before -> LookComparison.of(before.reading(), look.reading()))
                .orElseGet(() -> LookComparison.first(look.reading()));
        List<KeptLook.Sign> signs = new ArrayList<>();
        List<KeptLook.Sign> known = new ArrayList<>();
        boolean cannotTell = false;
        for (LookComparison.Change change : comparison.changes()) {
            Optional<KeptLook.Sign> sign =
                    look.kept().findSign(change.finding().id()).filter(KeptLook.Sign::counts);
            if (sign.isPresent()
                    && isKnownTo(answer, change.finding(), sign.get().level())) {
                known.add(sign.get());
            } else if (sign.isPresent() && change.isNewOrWorse()) {
                signs.add(sign.get());
            } else if (sign.isPresent() && change.kind() == LookComparison.Kind.CANNOT_TELL) {
                cannotTell = true;
            }
        }
        // Another version of the checklist that asks otherwise: nobody can say that the writer had seen it.
        comparison.notComparable().stream()
                .flatMap(it -> look.kept().findSign(it.finding()).stream())
                .filter(KeptLook.Sign::counts)
                .forEach(signs::add);
        // What the vet had named may well be why the look is more urgent or strict than the one before.
        boolean higher = Urgency.rank(look.urgency())
                        > seen.map(before -> Urgency.rank(before.urgency())).orElse(-1)
                && known.stream()
                        .flatMap(sign -> sign.floor().stream())
                        .noneMatch(floor -> Urgency.rank(floor) >= Urgency.rank(look.urgency()));
        boolean stricter = isStricter(look, seen, known);
        boolean adds = !signs.isEmpty() || cannotTell || higher || stricter || isMustSeeLost(seen, look);
        return new WhatIsNew(look, signs, higher && !look.onlyUnseen(), adds);
    }

    /** Whether it is kept strictly apart for a way of spreading of which the vet neither read nor wrote. */
    private static boolean isStricter(LookFacts look, Optional<LookFacts> seen, List<KeptLook.Sign> known) {
        if (!look.isStrict()) {
            return false;
        }
        Set<String> readOrWritten = new HashSet<>();
        known.forEach(sign -> readOrWritten.addAll(sign.strictRoutes()));
        Optional<LookFacts> strictBefore = seen.filter(LookFacts::isStrict);
        strictBefore.ifPresent(before -> readOrWritten.addAll(before.kept().isolationRoutes()));
        boolean isAccountedFor = strictBefore.isPresent() || !readOrWritten.isEmpty();
        return !isAccountedFor || !readOrWritten.containsAll(look.kept().isolationRoutes());
    }

    /** Something that has to be seen was seen in the look before, and is not now. */
    private static boolean isMustSeeLost(Optional<LookFacts> before, LookFacts now) {
        return now.reading().unseenMustSee().stream()
                .anyMatch(state -> before.flatMap(
                                look -> look.reading().find(state.finding().id()))
                        .filter(then -> then.possible().size() == 1)
                        .isPresent());
    }

    /** Whether the vet said that the finding is there, as far along its chain or further. */
    private static boolean isKnownTo(VetAnswer answer, ChecklistDraft.Finding finding, String level) {
        return answer.findings().stream()
                .filter(said -> said.verdict() != VetAnswer.Verdict.REJECTED)
                .filter(said -> said.finding().filter(finding.id()::equals).isPresent())
                .flatMap(said -> said.level().stream())
                .anyMatch(said -> isNoWorse(finding, level, said));
    }

    /** Whether a level is another one, or comes before it on a chain. */
    static boolean isNoWorse(ChecklistDraft.Finding finding, String level, String than) {
        return level.equals(than)
                || finding.chains().stream()
                        .anyMatch(chain -> chain.contains(level) && chain.indexOf(level) < chain.indexOf(than));
    }

    /** The finding of a sign. */
    ChecklistDraft.Finding findingOf(KeptLook.Sign sign) {
        LookReading.@Nullable State state = look.reading().find(sign.finding()).orElse(null);
        return Objects.requireNonNull(state, "a sign of a finding of the look").finding();
    }
}
