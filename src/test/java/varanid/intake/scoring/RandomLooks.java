package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Looks that a checklist can read, of every kind of answer; now and then one that contradicts itself. */
final class RandomLooks {

    private final ChecklistDraft draft;
    private final Random random;

    RandomLooks(ChecklistDraft draft, Random random) {
        this.draft = draft;
        this.random = random;
    }

    Look next() {
        double missing = random.nextDouble() * 0.6;
        double reassuring = random.nextDouble();
        Map<String, Answer> answers = new HashMap<>();
        for (ChecklistDraft.Finding finding : draft.findings()) {
            double which = random.nextDouble();
            if (which < missing) {
                if (random.nextInt(3) == 0) {
                    answers.put(finding.id(), Answer.notObserved());
                }
            } else if (finding.notYetDue() != null && random.nextInt(6) == 0) {
                answers.put(finding.id(), Answer.notYetDue());
            } else {
                answers.put(finding.id(), answer(finding, reassuring));
            }
        }
        Map<String, String> attributes = new HashMap<>();
        for (ChecklistDraft.Attribute attribute : draft.attributes()) {
            if (random.nextInt(4) > 0) {
                attributes.put(attribute.id(), pick(attribute.values()).code());
            }
        }
        Set<String> conditions = new HashSet<>();
        Set<String> explainedBefore = new HashSet<>();
        if (random.nextInt(2) == 0) {
            for (ChecklistDraft.Condition condition : draft.conditions()) {
                if (random.nextInt(2) == 0) {
                    conditions.add(condition.id());
                }
            }
            if (random.nextInt(4) == 0) {
                explainedBefore.add(pick(draft.findings()).id());
            }
        }
        return new Look(answers, attributes, conditions, explainedBefore);
    }

    /** Something seen or measured. */
    Answer answer(ChecklistDraft.Finding finding, double reassuring) {
        if (finding.measure() != null) {
            return measured(finding, Objects.requireNonNull(finding.measure()));
        }
        return Answer.seen(
                random.nextDouble() < reassuring
                        ? NaiveScorer.reassuring(finding)
                        : pick(finding.levels()).code());
    }

    /** Mostly near where a band starts: there the mistakes would be. */
    private Answer measured(ChecklistDraft.Finding finding, ChecklistDraft.Measure measure) {
        BigDecimal low = number(finding, measure);
        BigDecimal high = random.nextInt(4) == 0 ? number(finding, measure) : low;
        ChecklistDraft.Companion asked = measure.companion();
        BigDecimal companion = asked == null || random.nextInt(5) == 0 ? null : companion(finding, asked);
        return new Answer.Measured(low.min(high), low.max(high), companion);
    }

    private BigDecimal number(ChecklistDraft.Finding finding, ChecklistDraft.Measure measure) {
        BigDecimal at = pick(pick(finding.bands()).from()).at();
        BigDecimal off = measure.step()
                .multiply(BigDecimal.valueOf(random.nextInt(9) - 4L, 1).movePointRight(random.nextInt(2)));
        return at.add(off).max(measure.min()).min(measure.max());
    }

    private BigDecimal companion(ChecklistDraft.Finding finding, ChecklistDraft.Companion asked) {
        List<BigDecimal> limits = new ArrayList<>(List.of(asked.min(), asked.max()));
        finding.bands().forEach(it -> {
            BigDecimal upTo = it.companionUpTo();
            if (upTo != null) {
                limits.add(upTo);
                limits.add(upTo.add(BigDecimal.ONE));
            }
        });
        return pick(limits).min(asked.max());
    }

    /** The same look with another answer to one finding; null takes the answer away. */
    static Look with(Look look, String finding, @Nullable Answer answer) {
        Map<String, Answer> answers = new HashMap<>(look.answers());
        if (answer == null) {
            answers.remove(finding);
        } else {
            answers.put(finding, answer);
        }
        return new Look(answers, look.attributes(), look.conditions(), look.explainedBefore());
    }

    <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }
}
