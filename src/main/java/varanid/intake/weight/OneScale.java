package varanid.intake.weight;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * All weighings as the scale of the latest would have shown them.
 *
 * <p>Two scales differ by an offset nobody knows, so a reading of another scale comes over only through a pair: the
 * animal on both scales on one day, in the same state. Its interval is widened by what both displays of the pair hide.
 */
final class OneScale {

    /**
     * @param weighing as it was
     * @param grams as the latest scale would have shown it
     */
    record Placed(Weighing weighing, GramRange grams, boolean throughPair) {}

    private final List<Placed> placed = new ArrayList<>();
    private final Map<Weighing, Caveat> leftOut = new HashMap<>();

    OneScale(List<Weighing> weighings, Weighing latest, WeightRules rules) {
        Map<String, GramRange> factors = latest.scale() == null ? Map.of() : factors(weighings, latest.scale(), rules);
        for (Weighing each : weighings) {
            Optional<GramRange> grams = each.findGrams();
            if (each.scale() == null || latest.scale() == null) {
                leftOut.put(each, Caveat.SCALE_UNKNOWN);
            } else if (grams.isEmpty()) {
                leftOut.put(each, Caveat.RESOLUTION_UNKNOWN);
            } else if (!factors.containsKey(each.scale())) {
                leftOut.put(each, Caveat.SCALE_CHANGED);
            } else {
                boolean same = each.scale().equals(latest.scale());
                placed.add(new Placed(
                        each,
                        same ? grams.get() : grams.get().times(Objects.requireNonNull(factors.get(each.scale()))),
                        !same));
            }
        }
    }

    /** Those that can be compared, oldest first. */
    List<Placed> placed() {
        return placed;
    }

    Optional<Placed> find(Weighing weighing) {
        return placed.stream().filter(each -> each.weighing().equals(weighing)).findFirst();
    }

    /** Why some of those cannot be compared. */
    Set<Caveat> whyLeftOut(Predicate<Weighing> which) {
        Set<Caveat> why = EnumSet.noneOf(Caveat.class);
        leftOut.forEach((weighing, caveat) -> {
            if (which.test(weighing)) {
                why.add(caveat);
            }
        });
        return why;
    }

    /** By what a reading of each scale is multiplied; scales that nothing links are not in it. */
    private static Map<String, GramRange> factors(List<Weighing> weighings, String latestScale, WeightRules rules) {
        Map<String, GramRange> factors = new HashMap<>(Map.of(latestScale, GramRange.ONE));
        ArrayDeque<String> reached = new ArrayDeque<>(List.of(latestScale));
        while (!reached.isEmpty()) {
            String here = reached.remove();
            GramRange factor = Objects.requireNonNull(factors.get(here));
            Map<String, GramRange> links = new HashMap<>();
            for (Weighing ours : weighings) {
                for (Weighing theirs : weighings) {
                    if (here.equals(ours.scale()) && isPair(ours, theirs, rules)) {
                        // the list is in order of time, so the newest pair stays
                        links.put(
                                Objects.requireNonNull(theirs.scale()),
                                ours.findGrams()
                                        .orElseThrow()
                                        .over(theirs.findGrams().orElseThrow()));
                    }
                }
            }
            links.forEach((scale, link) -> {
                if (factors.putIfAbsent(scale, link.times(factor)) == null) {
                    reached.add(scale);
                }
            });
        }
        return factors;
    }

    private static boolean isPair(Weighing one, Weighing other, WeightRules rules) {
        return one.day().equals(other.day())
                && other.scale() != null
                && !other.scale().equals(one.scale())
                && one.findGrams().isPresent()
                && other.findGrams().isPresent()
                && one.wet() == other.wet()
                && one.isFedWithin(rules.heavyFor()) == other.isFedWithin(rules.heavyFor());
    }
}
