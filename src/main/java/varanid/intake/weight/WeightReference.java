package varanid.intake.weight;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;

/** What {@code shared/reference/weight-thresholds.yaml} says. */
@Component
class WeightReference {

    private static final String PATH = "/shared/reference/weight-thresholds.yaml";

    private static final YAMLMapper YAML = YAMLMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    private final WeightRules rules;

    WeightReference() {
        rules = ReferenceFile.read(PATH, file -> YAML.readValue(file, WeightFile.class))
                .rules();
    }

    WeightRules rules() {
        return rules;
    }

    private record WeightFile(
            String asOf,
            Heavy heavy,
            SlopeLine slope,
            AnswerLine answer,
            DoubtLine doubt,
            List<WeightRules.Threshold> thresholds,
            Map<String, String> texts,
            Map<String, String> advice,
            Map<String, String> sources) {

        WeightRules rules() {
            return new WeightRules(
                    Duration.ofHours(heavy.hoursAfterFood),
                    new WeightRules.SlopeRules(
                            slope.weighingDays,
                            slope.intervalFrom,
                            slope.confidence,
                            slope.longestDays,
                            slope.heavyShareBelow,
                            slope.method),
                    new WeightRules.AnswerRules(
                            answer.lowestPercent,
                            answer.highestPercent,
                            answer.longestDays,
                            answer.dueAfterDays,
                            answer.staleAfterDays),
                    new WeightRules.DoubtRules(doubt.factor, doubt.withinDays, doubt.text),
                    thresholds,
                    Arrays.stream(Caveat.values())
                            .filter(each -> texts.containsKey(each.code()))
                            .collect(Collectors.toMap(
                                    Function.identity(), each -> Objects.requireNonNull(texts.get(each.code())))),
                    Arrays.stream(WeightRules.Advice.values())
                            .filter(each -> advice.containsKey(each.code()))
                            .collect(Collectors.toMap(
                                    Function.identity(), each -> Objects.requireNonNull(advice.get(each.code())))),
                    sources);
        }
    }

    private record Heavy(int hoursAfterFood, List<String> source) {}

    private record SlopeLine(
            int weighingDays,
            int intervalFrom,
            double confidence,
            int longestDays,
            double heavyShareBelow,
            String method,
            List<String> source) {}

    private record DoubtLine(BigDecimal factor, int withinDays, String text, List<String> source) {}

    private record AnswerLine(
            BigDecimal lowestPercent,
            BigDecimal highestPercent,
            int longestDays,
            int dueAfterDays,
            int staleAfterDays,
            List<String> source) {}
}
