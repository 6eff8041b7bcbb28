package varanid.intake.scoring;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What one finding's levels count for, as numbers.
 *
 * <p>A set of levels is an {@code int} with one bit per level. Level 0 is the reassuring one.
 */
final class FindingRules {

    final ChecklistDraft.Finding draft;
    final String id;
    final int index;
    final int section;
    final int family;
    final int familyPart;
    final int basePoints;
    final String[] levels;
    /** Points above the reassuring level's. */
    final int[] raised;

    final int[] floor;
    /** One bit per isolation route. */
    final int[] routes;
    /** For each level, the terms that it satisfies. */
    final long[][] terms;
    /** The set of levels that change nothing whatever: most answers of most animals, skipped at once. */
    private final int idle;

    private final boolean measured;
    final boolean mustSee;
    final int[] mustSeeUnderCondition;
    final int[] maskedByCondition;
    final Circumstances.Excuse[] excuses;
    final int all;
    /** For each level, the set of levels that are it or come after it on one of its chains. */
    private final int[] orWorse;
    /** For each level, the set of levels between it and the reassuring level, both included. */
    private final int[] orMilder;

    private final byte[][] mildestOf;
    private final byte[][] worstOf;
    /** The one level that counts for at least as much as every other. */
    final int worst;

    final CaseRules[] cases;
    /** The one other finding that the cases depend on, or -1. */
    final int driver;

    FindingRules(
            Checklist checklist,
            int index,
            ChecklistDraft.Finding draft,
            int section,
            int family,
            int familyPart,
            Terms allTerms) {
        this.draft = draft;
        id = draft.id();
        measured = draft.measure() != null;
        this.index = index;
        this.section = section;
        this.family = family;
        this.familyPart = familyPart;
        int count = draft.levels().size();
        levels = draft.levels().stream().map(ChecklistDraft.Level::code).toArray(String[]::new);
        all = (1 << count) - 1;
        basePoints = checklist.severity(draft.levels().get(0).points());
        raised = new int[count];
        floor = new int[count];
        routes = new int[count];
        terms = new long[count][allTerms.words()];
        orWorse = new int[count];
        orMilder = new int[count];
        readChains();

        ChecklistDraft.Isolation isolation = checklist.draft().isolation();
        for (int l = 0; l < count; l++) {
            ChecklistDraft.Level level = draft.levels().get(l);
            raised[l] = checklist.severity(level.points()) - basePoints;
            floor[l] = level.floor() == null ? 0 : checklist.outcome(level.floor());
            routes[l] = level.isolate() == null || isolation == null ? 0 : 1 << routeIndex(isolation, level.isolate());
        }
        for (Map.Entry<ChecklistDraft.Term, Integer> term : allTerms.all()) {
            if (term.getKey().finding().equals(draft.id())) {
                int from = levelIndex(term.getKey().level());
                for (int l = 0; l < count; l++) {
                    if ((orWorse[from] & 1 << l) != 0) {
                        Terms.set(terms[l], term.getValue());
                    }
                }
            }
        }
        int idleLevels = 0;
        for (int l = 0; l < count; l++) {
            boolean noTerm = true;
            for (long word : terms[l]) {
                noTerm &= word == 0;
            }
            if (raised[l] == 0 && floor[l] == 0 && routes[l] == 0 && noTerm) {
                idleLevels |= 1 << l;
            }
        }
        idle = idleLevels;
        mildestOf = new byte[all + 1][];
        worstOf = new byte[all + 1][];
        for (int set = 1; set <= all; set++) {
            mildestOf[set] = ends(set, false);
            worstOf[set] = ends(set, true);
        }
        worst = worstOf[all][0];
        mustSee = draft.mustSee();
        mustSeeUnderCondition = checklist.draft().conditions().stream()
                .filter(condition -> condition.mustSee().contains(draft.id()))
                .mapToInt(condition -> checklist.conditionIndexOf(condition.id()))
                .toArray();
        maskedByCondition = checklist.draft().conditions().stream()
                .filter(condition -> condition.masks().contains(draft.id()))
                .mapToInt(condition -> checklist.conditionIndexOf(condition.id()))
                .toArray();
        excuses = checklist.draft().conditions().stream()
                .flatMap(condition -> condition.explains().stream()
                        .filter(explains -> explains.finding().equals(draft.id()))
                        .map(explains -> new Circumstances.Excuse(
                                checklist.conditionIndexOf(condition.id()), levelIndex(explains.level()), explains)))
                .toArray(Circumstances.Excuse[]::new);
        cases = draft.bands().stream()
                .map(bands -> new CaseRules(checklist, this, bands))
                .toArray(CaseRules[]::new);
        int driverFound = -1;
        for (CaseRules it : cases) {
            if (it.driver >= 0) {
                driverFound = it.driver;
            }
        }
        driver = driverFound;
    }

    static int routeIndex(ChecklistDraft.Isolation isolation, String route) {
        for (int i = 0; i < isolation.routes().size(); i++) {
            if (isolation.routes().get(i).code().equals(route)) {
                return i;
            }
        }
        throw new IllegalArgumentException(route);
    }

    boolean isMeasured() {
        return measured;
    }

    boolean isIdle(int level) {
        return (idle & 1 << level) != 0;
    }

    /** Index of a level, or -1. */
    int levelIndex(String code) {
        for (int l = 0; l < levels.length; l++) {
            if (levels[l].equals(code)) {
                return l;
            }
        }
        return -1;
    }

    /** The level itself and every level after it on a chain. */
    int orWorse(int level) {
        return orWorse[level];
    }

    /** The level itself and every level before it on a chain. */
    int orMilder(int level) {
        return orMilder[level];
    }

    /** The levels of the set that nothing in it is milder than; one for nearly every set. */
    byte[] mildestOf(int set) {
        return mildestOf[set];
    }

    /** The levels of the set that nothing in it is worse than; one for nearly every set. */
    byte[] worstOf(int set) {
        return worstOf[set];
    }

    /** Whether level a counts for at least as much as level b in every respect. */
    boolean atLeast(int a, int b) {
        if (raised[a] < raised[b] || floor[a] < floor[b] || (routes[b] & ~routes[a]) != 0) {
            return false;
        }
        for (int w = 0; w < terms[a].length; w++) {
            if ((terms[b][w] & ~terms[a][w]) != 0) {
                return false;
            }
        }
        return true;
    }

    /** Every level that some number can fall in, in these animals and with this level of the driver. */
    int reachable(int[] attributeValues, int driverLevel) {
        int set = 0;
        for (CaseRules it : cases) {
            if (it.isFor(attributeValues, driverLevel)) {
                set |= it.allLevels();
                if (!it.looksAtCompanion()) {
                    break;
                }
            }
        }
        return set;
    }

    /** How many steps of the measure a number is, rounded half up in decimals. */
    long inSteps(BigDecimal value) {
        BigDecimal step = Objects.requireNonNull(draft.measure()).step();
        if (step.precision() == 1 && step.unscaledValue().equals(BigInteger.ONE)) {
            // Steps of 1, 0.1 and so on: the digits say it, and dividing is slow.
            return value.setScale(step.scale(), RoundingMode.HALF_UP)
                    .unscaledValue()
                    .longValueExact();
        }
        return value.divide(step, 0, RoundingMode.HALF_UP).longValueExact();
    }

    private void readChains() {
        for (int l = 0; l < levels.length; l++) {
            orWorse[l] |= 1 << l;
            orMilder[l] |= 1 << l;
        }
        for (List<String> chain : draft.chains()) {
            for (int i = 0; i < chain.size(); i++) {
                int at = levelIndex(chain.get(i));
                for (int j = i; j < chain.size(); j++) {
                    orWorse[at] |= 1 << levelIndex(chain.get(j));
                    orMilder[levelIndex(chain.get(j))] |= 1 << at;
                }
            }
        }
    }

    private byte[] ends(int set, boolean worst) {
        int kept = 0;
        for (int l = 0; l < levels.length; l++) {
            if ((set & 1 << l) == 0) {
                continue;
            }
            boolean beaten = false;
            for (int other = 0; other < levels.length && !beaten; other++) {
                if (other != l && (set & 1 << other) != 0) {
                    boolean further = worst ? atLeast(other, l) : atLeast(l, other);
                    boolean same = worst ? atLeast(l, other) : atLeast(other, l);
                    // Of levels that count for the same, the worst end keeps the last and the mild end the first.
                    beaten = further && (!same || (worst ? other > l : other < l));
                }
            }
            if (!beaten) {
                kept |= 1 << l;
            }
        }
        byte[] ends = new byte[Integer.bitCount(kept)];
        int next = 0;
        for (byte l = 0; l < levels.length; l++) {
            if ((kept & 1 << l) != 0) {
                ends[next++] = l;
            }
        }
        return ends;
    }
}
