package varanid.intake.condition;

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

/** What {@code shared/reference/body-condition.yaml} says. */
@Component
class ConditionReference {

    private static final String PATH = "/shared/reference/body-condition.yaml";

    private static final YAMLMapper YAML = YAMLMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    private final ConditionRules rules;

    ConditionReference() {
        rules = ReferenceFile.read(PATH, file -> YAML.readValue(file, ConditionFile.class))
                .rules();
    }

    ConditionRules rules() {
        return rules;
    }

    private record ConditionFile(
            String asOf,
            List<Line> lines,
            Scatter scatter,
            Lengths lengths,
            Pairs pairs,
            Index scaledMassIndex,
            Map<String, String> questions,
            Map<String, String> texts,
            String notice) {

        ConditionRules rules() {
            return new ConditionRules(
                    lines.stream()
                            .map(each -> new MassLine(each.id, each.intercept, each.slope, each.source))
                            .toList(),
                    scatter.factor,
                    lengths.shortestMillimetres,
                    lengths.longestMillimetres,
                    pairs.daysApart,
                    new ConditionRules.IndexRules(
                            scaledMassIndex.slope, scaledMassIndex.shortestOfLongest, scaledMassIndex.daysApart),
                    Arrays.stream(MassForLength.Place.values())
                            .filter(each -> questions.containsKey(each.code()))
                            .collect(Collectors.toMap(
                                    Function.identity(), each -> Objects.requireNonNull(questions.get(each.code())))),
                    Arrays.stream(ConditionRules.Said.values())
                            .filter(each -> texts.containsKey(each.code()))
                            .collect(Collectors.toMap(
                                    Function.identity(), each -> Objects.requireNonNull(texts.get(each.code())))),
                    notice);
        }
    }

    private record Line(String id, double intercept, double slope, String source) {}

    private record Scatter(double factor, String source) {}

    private record Lengths(double shortestMillimetres, double longestMillimetres, String source) {}

    private record Pairs(Map<String, Integer> daysApart, String source) {}

    private record Index(double slope, double shortestOfLongest, int daysApart, String source) {}
}
