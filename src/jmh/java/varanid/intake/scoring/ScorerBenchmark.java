package varanid.intake.scoring;

import java.io.InputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import varanid.intake.checklist.ChecklistReader;

/**
 * What a decision costs, from a map of answers to bounds, recommendation, isolation and settled, on the shipped
 * checklist; beside it the least that any scorer must do with the same map: look each answer up and add its points.
 *
 * <p>Each call takes the next of {@value #LOOKS} different looks, so that nothing is learnt by heart.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(3)
public class ScorerBenchmark {

    private static final int LOOKS = 32;
    private static final Map<String, String> ANIMAL = Map.of("lifeStage", "juvenile", "origin", "W");

    /** Every finding answered; or every third one missing. */
    @Param({"complete", "third-missing"})
    public String answered;

    private Scorer scorer;
    private Circumstances circumstances;
    private Look[] looks;
    private int next;
    private HandWrittenSum sum;

    @Setup
    public void read() throws Exception {
        Checklist checklist;
        try (InputStream in = Objects.requireNonNull(
                ScorerBenchmark.class.getResourceAsStream("/shared/checklists/varanid-intake.v1.yaml"))) {
            checklist = new ChecklistReader().read("varanid-intake", in.readAllBytes());
        }
        scorer = new Scorer(checklist);
        circumstances = Circumstances.of(checklist, ANIMAL, Set.of(), Set.of());
        sum = new HandWrittenSum(checklist.draft());
        Random random = new Random(1);
        looks = new Look[LOOKS];
        for (int i = 0; i < LOOKS; i++) {
            do {
                looks[i] = new Look(answers(checklist.draft(), random), ANIMAL, Set.of());
            } while (!scorer.faultsOf(looks[i]).isEmpty());
        }
    }

    /** Four of five answers reassuring, as in an animal with some signs. */
    private Map<String, Answer> answers(ChecklistDraft draft, Random random) {
        Map<String, Answer> answers = new HashMap<>();
        int number = 0;
        for (ChecklistDraft.Finding finding : draft.findings()) {
            boolean missing = answered.equals("third-missing") && number++ % 3 == 2;
            if (missing) {
                continue;
            }
            if (finding.measure() != null) {
                List<ChecklistDraft.Start> starts =
                        finding.bands().get(finding.bands().size() - 1).from();
                BigDecimal value = starts.get(random.nextInt(starts.size())).at();
                BigDecimal over = finding.measure().companion() == null ? null : BigDecimal.TEN;
                answers.put(finding.id(), new Answer.Measured(value, value, over));
            } else {
                int level = random.nextInt(5) > 0 ? 0 : random.nextInt(finding.levels().size());
                answers.put(finding.id(), Answer.seen(finding.levels().get(level).code()));
            }
        }
        return answers;
    }

    private Look look() {
        return looks[next++ & LOOKS - 1];
    }

    @Benchmark
    public Decision decide() {
        return scorer.decide(circumstances, look().answers());
    }

    /** Reading the circumstances too, as for the first look at an animal. */
    @Benchmark
    public Decision decideWithCircumstances() {
        return scorer.decide(
                Circumstances.of(scorer.checklist(), ANIMAL, Set.of(), Set.of()), look().answers());
    }

    @Benchmark
    public int handWrittenSum() {
        return sum.of(look().answers());
    }

    /** Reasons, unknowns, next looks, settling set, nearest change, witnesses, advice. */
    @Benchmark
    public Result score() {
        return scorer.score(look());
    }

    /** The order of the next looks alone. */
    @Benchmark
    public List<Result.NextLook> nextLooks() {
        Reading reading = Reading.of(circumstances, look().answers(), new ArrayList<>());
        Bounds bounds = Bounds.of(reading);
        return new NextLooks(reading, bounds, new WhatIf(reading, bounds)).inOrder();
    }

    /**
     * The points of the answers and nothing else: for each finding of the checklist, look its answer up in the map,
     * find the level and add its points from an array.
     */
    private static final class HandWrittenSum {

        private final String[] findings;
        private final String[][] levels;
        private final int[][] points;

        HandWrittenSum(ChecklistDraft draft) {
            int count = draft.findings().size();
            findings = new String[count];
            levels = new String[count][];
            points = new int[count][];
            for (int f = 0; f < count; f++) {
                ChecklistDraft.Finding finding = draft.findings().get(f);
                findings[f] = finding.id();
                levels[f] = finding.levels().stream()
                        .map(ChecklistDraft.Level::code)
                        .toArray(String[]::new);
                points[f] = finding.levels().stream()
                        .mapToInt(level -> level.points().movePointRight(1).intValueExact())
                        .toArray();
            }
        }

        int of(Map<String, Answer> answers) {
            int sum = 0;
            for (int f = 0; f < findings.length; f++) {
                Answer answer = answers.get(findings[f]);
                if (answer instanceof Answer.Seen seen) {
                    String[] codes = levels[f];
                    for (int l = 0; l < codes.length; l++) {
                        if (codes[l].equals(seen.level())) {
                            sum += points[f][l];
                            break;
                        }
                    }
                } else if (answer instanceof Answer.Measured measured) {
                    sum += Math.min(points[f][points[f].length - 1], measured.low().intValue());
                }
            }
            return sum;
        }
    }
}
