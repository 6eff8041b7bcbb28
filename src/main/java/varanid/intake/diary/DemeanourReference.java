package varanid.intake.diary;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;

/** What {@code shared/reference/demeanour.yaml} says. */
@Component
class DemeanourReference {

    private static final String PATH = "/shared/reference/demeanour.yaml";

    private static final YAMLMapper YAML = YAMLMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private final DemeanourRules rules;

    DemeanourReference() {
        rules = ReferenceFile.read(PATH, file -> YAML.readValue(file, DemeanourFile.class))
                .rules();
    }

    DemeanourRules rules() {
        return rules;
    }

    private record DemeanourFile(
            String asOf,
            List<DemeanourRules.Word> scale,
            DemeanourRules.Word dull,
            DemeanourRules.Trend trend,
            int recentDays,
            DemeanourRules.SuddenlyCalm suddenlyCalm,
            List<AdviceLine> advice,
            List<DemeanourRules.LookNow> lookNow,
            Map<String, String> sources) {

        DemeanourRules rules() {
            List<DemeanourRules.Word> words = new ArrayList<>(scale);
            words.add(dull);
            return new DemeanourRules(
                    words,
                    trend,
                    recentDays,
                    suddenlyCalm,
                    advice.stream().map(AdviceLine::advice).toList(),
                    lookNow,
                    sources);
        }
    }

    private record AdviceLine(String id, When when, String text, List<String> source) {

        DemeanourRules.Advice advice() {
            return new DemeanourRules.Advice(
                    id, orEmpty(when.demeanour), orEmpty(when.lifeStages), orEmpty(when.trend), text, source);
        }

        private static <T> Set<T> orEmpty(@Nullable List<T> list) {
            return list == null ? Set.of() : Set.copyOf(list);
        }
    }

    private record When(
            @Nullable List<Demeanour> demeanour,
            @Nullable List<String> lifeStages,
            @Nullable List<DemeanourTrend.Direction> trend) {}
}
