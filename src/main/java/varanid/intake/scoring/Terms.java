package varanid.intake.scoring;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;

/** Every "this level of that finding, or worse" that a combination asks for, numbered. */
final class Terms {

    private final Map<ChecklistDraft.Term, Integer> numbers = new HashMap<>();

    Terms(ChecklistDraft draft) {
        for (ChecklistDraft.Combination combination : draft.combinations()) {
            for (ChecklistDraft.Group group : combination.groups()) {
                group.of().forEach(term -> numbers.putIfAbsent(term, numbers.size()));
            }
        }
    }

    int number(ChecklistDraft.Term term) {
        return Objects.requireNonNull(numbers.get(term));
    }

    /** How many {@code long}s hold one bit per term. */
    int words() {
        return (numbers.size() + 63) / 64;
    }

    Iterable<Map.Entry<ChecklistDraft.Term, Integer>> all() {
        return numbers.entrySet();
    }

    static void set(long[] bits, int number) {
        bits[number >> 6] |= 1L << (number & 63);
    }
}
