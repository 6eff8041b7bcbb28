package varanid.intake.scoring;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A checklist that has been checked and can score.
 *
 * <p>Immutable. Everything that scoring needs is held in arrays indexed by finding and by level, so that a decision
 * costs a few passes over small arrays; {@link #draft()} keeps the words.
 *
 * <p>Points are integers here: how often the largest number that divides them all goes into them, counted from the
 * points of each finding's reassuring level, so that a worse level never has fewer. Where few points are bad news the
 * sign is turned. {@link #points} turns them back.
 */
public final class Checklist {

    /** More levels than a person can tell apart; it also keeps sets of levels in one {@code int}. */
    static final int MOST_LEVELS = 10;

    private final ChecklistDraft draft;
    private final Map<String, Integer> findingIndex = new HashMap<>();
    private final Map<String, Integer> outcomeIndex = new HashMap<>();
    private final Map<String, Integer> conditionIndex = new HashMap<>();
    private final BigDecimal grain;

    final FindingRules[] findings;
    final CombinationRules[] combinations;
    /** For each combination, terms of which at least one must be met; 0 where that cannot be said so simply. */
    final long[] leastTerms;

    final ImplicationRules[] implications;
    final AttributeRules[] attributes;
    final Bands totalBands;
    final Bands[] sectionBands;
    final int familyCount;
    /** For each pair of a family and a section it has members in: the section. */
    final int[] sectionOfFamilyPart;

    final int termWords;
    /** Findings whose level decides how another finding is read. */
    final int[] drivers;
    /** Index of the outcome that the precaution rule asks for, 0 where there is no such rule. */
    final int precautionOutcome;

    /** Findings that are read by the level of another one. */
    final FindingRules[] driven;
    /** Findings that must be seen whatever the conditions of the look. */
    final int[] mustSee;

    /** Shared by all looks without conditions; never written to. */
    final Circumstances.@Nullable Excuse[] noExcuses;

    private final @Nullable UnknownExposure unknownExposure;

    final int basePoints;
    private final int[] sectionBasePoints;

    private Checklist(ChecklistDraft draft) {
        this.draft = draft;
        for (int i = 0; i < draft.outcomes().size(); i++) {
            outcomeIndex.put(draft.outcomes().get(i).code(), i);
        }
        for (int i = 0; i < draft.conditions().size(); i++) {
            conditionIndex.put(draft.conditions().get(i).id(), i);
        }
        for (int i = 0; i < draft.findings().size(); i++) {
            findingIndex.put(draft.findings().get(i).id(), i);
        }
        grain = grainOf(draft);

        attributes = draft.attributes().stream().map(AttributeRules::new).toArray(AttributeRules[]::new);
        Terms terms = new Terms(draft);
        termWords = terms.words();

        Map<String, Integer> sectionIndex = new HashMap<>();
        draft.sections().forEach(section -> sectionIndex.put(section.id(), sectionIndex.size()));
        Map<String, Integer> familyIndex = new HashMap<>();
        draft.families().forEach(family -> familyIndex.put(family.id(), familyIndex.size()));
        familyCount = familyIndex.size();
        Map<String, Integer> familyParts = new HashMap<>();
        List<Integer> partSections = new ArrayList<>();

        int[] sectionBase = new int[draft.sections().size()];
        int base = 0;
        findings = new FindingRules[draft.findings().size()];
        for (int f = 0; f < findings.length; f++) {
            ChecklistDraft.Finding finding = draft.findings().get(f);
            int section = numberIn(sectionIndex, finding.section());
            int family = finding.family() == null ? -1 : numberIn(familyIndex, finding.family());
            int part = family < 0
                    ? -1
                    : familyParts.computeIfAbsent(finding.family() + " " + section, key -> {
                        partSections.add(section);
                        return partSections.size() - 1;
                    });
            findings[f] = new FindingRules(this, f, finding, section, family, part, terms);
            base += findings[f].basePoints;
            sectionBase[section] += findings[f].basePoints;
        }
        drivers = Arrays.stream(findings)
                .mapToInt(finding -> finding.driver)
                .filter(driver -> driver >= 0)
                .distinct()
                .toArray();
        driven = Arrays.stream(findings).filter(finding -> finding.driver >= 0).toArray(FindingRules[]::new);
        mustSee = Arrays.stream(findings)
                .filter(finding -> finding.mustSee)
                .mapToInt(finding -> finding.index)
                .toArray();
        noExcuses = new Circumstances.Excuse[findings.length];
        ChecklistDraft.Isolation isolation = draft.isolation();
        unknownExposure = isolation == null || isolation.unknownExposure() == null
                ? null
                : new UnknownExposure(this, isolation, isolation.unknownExposure());
        basePoints = base;
        sectionBasePoints = sectionBase;
        sectionOfFamilyPart = partSections.stream().mapToInt(Integer::intValue).toArray();

        totalBands = new Bands(this, draft.total().bands(), base);
        sectionBands = new Bands[draft.sections().size()];
        for (int s = 0; s < sectionBands.length; s++) {
            sectionBands[s] = new Bands(this, draft.sections().get(s).bands(), sectionBase[s]);
        }
        combinations = draft.combinations().stream()
                .map(combination -> new CombinationRules(this, combination, terms))
                .toArray(CombinationRules[]::new);
        leastTerms = Arrays.stream(combinations)
                .mapToLong(CombinationRules::leastTerms)
                .toArray();
        implications = draft.implies().stream()
                .map(implication -> new ImplicationRules(this, implication))
                .toArray(ImplicationRules[]::new);
        precautionOutcome =
                draft.precaution() == null ? 0 : outcome(draft.precaution().outcome());
    }

    /**
     * Checks a draft and makes it ready to score.
     *
     * @throws ChecklistRefused with every fault at once
     */
    public static Checklist from(ChecklistDraft draft) {
        List<Fault> faults = ReferenceCheck.faultsOf(draft);
        if (faults.isEmpty()) {
            Checklist checklist = new Checklist(draft);
            faults = LawCheck.faultsOf(checklist);
            if (faults.isEmpty()) {
                return checklist;
            }
        }
        throw new ChecklistRefused(draft.id() + " version " + draft.version(), faults);
    }

    public ChecklistDraft draft() {
        return draft;
    }

    public Optional<ChecklistDraft.Finding> findFinding(String id) {
        int f = indexOf(id);
        return f < 0 ? Optional.empty() : Optional.of(draft.findings().get(f));
    }

    /** Index of a finding, or -1. */
    int indexOf(String finding) {
        Integer f = findingIndex.get(finding);
        return f == null ? -1 : f;
    }

    /** Index of an outcome that is known to be on the scale. */
    int outcome(String code) {
        return numberIn(outcomeIndex, code);
    }

    String outcomeCode(int index) {
        return draft.outcomes().get(index).code();
    }

    /** Index of a condition, or -1. */
    int conditionIndexOf(String condition) {
        Integer c = conditionIndex.get(condition);
        return c == null ? -1 : c;
    }

    int lastOutcome() {
        return draft.outcomes().size() - 1;
    }

    /** The route by which an animal is kept apart because nobody knows what it was near; 0 for none. */
    int unknownExposureRoutes(Reading reading) {
        return unknownExposure == null ? 0 : unknownExposure.routes(reading);
    }

    boolean lowerIsWorse() {
        return draft.total().direction() == ChecklistDraft.Direction.LOWER_IS_WORSE;
    }

    /** The integer that stands for so many points of the file. */
    int severity(BigDecimal points) {
        int grains = points.divide(grain, 0, RoundingMode.UNNECESSARY).intValueExact();
        return lowerIsWorse() ? -grains : grains;
    }

    /** The points of the file that a sum of severities stands for. */
    BigDecimal points(int severity) {
        BigDecimal points = grain.multiply(BigDecimal.valueOf(lowerIsWorse() ? -severity : severity));
        BigDecimal plain = points.stripTrailingZeros();
        return plain.scale() < 0 ? plain.setScale(0, RoundingMode.UNNECESSARY) : plain;
    }

    BigDecimal totalPoints(int raised) {
        return points(basePoints + raised);
    }

    BigDecimal sectionPoints(int section, int raised) {
        return points(sectionBasePoints[section] + raised);
    }

    private static int numberIn(Map<String, Integer> index, String id) {
        return Objects.requireNonNull(index.get(id), id);
    }

    /** The largest number of which all points and thresholds are multiples: sums then count in small integers. */
    private static BigDecimal grainOf(ChecklistDraft draft) {
        List<BigDecimal> numbers = new ArrayList<>();
        draft.findings().forEach(finding -> finding.levels().forEach(level -> numbers.add(level.points())));
        draft.total().bands().forEach(band -> numbers.add(band.threshold()));
        draft.sections().forEach(section -> section.bands().forEach(band -> numbers.add(band.threshold())));
        draft.combinations().stream()
                .flatMap(combination -> combination.groups().stream())
                .map(ChecklistDraft.Group::pointsFromOthers)
                .filter(Objects::nonNull)
                .forEach(numbers::add);
        int decimals = numbers.stream().mapToInt(BigDecimal::scale).max().orElse(0);
        int scale = Math.max(0, decimals);
        BigInteger grain = numbers.stream()
                .map(number -> number.setScale(scale, RoundingMode.UNNECESSARY).unscaledValue())
                .reduce(BigInteger.ZERO, BigInteger::gcd);
        return grain.signum() == 0 ? BigDecimal.ONE : new BigDecimal(grain, scale);
    }
}
