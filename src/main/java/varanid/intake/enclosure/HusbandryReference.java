package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.measures.Temperature;
import varanid.intake.measures.TemperatureUnit;
import varanid.intake.platform.reference.ReferenceFile;

/** What {@code shared/reference/husbandry.yaml} says. */
@Component
class HusbandryReference {

    private static final String PATH = "/shared/reference/husbandry.yaml";

    private static final YAMLMapper YAML = YAMLMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private final HusbandryRules rules;

    HusbandryReference() {
        rules = ReferenceFile.read(PATH, file -> YAML.readValue(file, HusbandryFile.class))
                .rules();
    }

    HusbandryRules rules() {
        return rules;
    }

    private static Quantity quantity(String code) {
        return Quantity.find(code).orElseThrow(() -> new IllegalArgumentException("no quantity: " + code));
    }

    private static HusbandryRange.Kind kind(String code) {
        return HusbandryRange.Kind.valueOf(code.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    private record HusbandryFile(
            String asOf,
            List<RangeLine> ranges,
            UvPart uv,
            DampnessLine dampness,
            List<HusbandryRules.Sign> signs,
            List<HusbandryRules.LookCondition> lookConditions,
            List<HusbandryRules.Fact> facts,
            List<HusbandryRules.Measure> measures,
            HusbandryRules.Freshness freshness,
            List<SizeLine> sizes,
            List<String> measureNext,
            Map<String, String> texts,
            List<CautionLine> cautions,
            Map<String, String> sources) {

        HusbandryRules rules() {
            return new HusbandryRules(
                    ranges.stream().map(RangeLine::range).toList(),
                    uv.uvZones(),
                    new HusbandryRules.Dampness(dampness.marginCelsius, dampness.surfaceHumidityPercent),
                    signs,
                    lookConditions,
                    facts,
                    cautions.stream().map(CautionLine::caution).toList(),
                    measures,
                    freshness,
                    sizes.stream().map(SizeLine::size).toList(),
                    measureNext,
                    texts,
                    sources);
        }
    }

    private record RangeLine(
            String species,
            List<String> lifeStages,
            String quantity,
            @Nullable BigDecimal from,
            @Nullable BigDecimal to,
            String unit,
            String kind,
            @Nullable OnlyWhereLine onlyWhere,
            String note,
            List<String> source) {

        HusbandryRange range() {
            return new HusbandryRange(
                    species,
                    lifeStages,
                    HusbandryReference.quantity(quantity),
                    stored(from),
                    stored(to),
                    HusbandryReference.kind(kind),
                    onlyWhere == null
                            ? null
                            : new HusbandryRange.OnlyWhere(
                                    HusbandryReference.quantity(onlyWhere.quantity), onlyWhere.atMostCelsius),
                    note,
                    source);
        }

        /** A source keeps the unit it was written in; what is compared is in degrees Celsius, or percent. */
        private @Nullable BigDecimal stored(@Nullable BigDecimal end) {
            if (end == null || unit.equals("%") || unit.equals("K")) {
                return end;
            }
            TemperatureUnit known = TemperatureUnit.find(unit)
                    .orElseThrow(() -> new IllegalArgumentException("no unit of a range: " + unit));
            return new Temperature(end, known).celsius();
        }
    }

    private record SizeLine(String id, String text, List<BigDecimal> likelyMillimetres, List<PracticeLine> practice) {

        HusbandryRules.Size size() {
            return new HusbandryRules.Size(
                    id,
                    text,
                    likelyMillimetres,
                    practice.stream().map(PracticeLine::practice).toList());
        }
    }

    private record PracticeLine(
            String species, List<String> lifeStages, String kind, String text, List<String> source) {

        HusbandryRules.Practice practice() {
            return new HusbandryRules.Practice(species, lifeStages, HusbandryReference.kind(kind), text, source);
        }
    }

    private record OnlyWhereLine(String quantity, BigDecimal atMostCelsius) {}

    private record DampnessLine(BigDecimal marginCelsius, BigDecimal surfaceHumidityPercent, List<String> source) {}

    private record UvPart(List<ZoneLine> zones, List<String> source, UnsafeLine unsafe, List<SpeciesLine> species) {

        UvZones uvZones() {
            Map<String, UvZones.SpeciesZones> bySpecies = new TreeMap<>();
            species.forEach(each ->
                    bySpecies.put(each.name, new UvZones.SpeciesZones(each.zones, each.confirmed, each.source)));
            return new UvZones(
                    zones.stream()
                            .map(each -> new UvZones.Zone(each.number, span(each.mean), span(each.maximum)))
                            .toList(),
                    unsafe.from,
                    bySpecies);
        }

        private static UvZones.Span span(List<BigDecimal> ends) {
            if (ends.size() != 2) {
                throw new IllegalArgumentException("a span has two ends, not " + ends);
            }
            return new UvZones.Span(ends.get(0), ends.get(1));
        }
    }

    private record ZoneLine(int number, List<BigDecimal> mean, List<BigDecimal> maximum) {}

    private record UnsafeLine(BigDecimal from, List<String> source) {}

    private record SpeciesLine(String name, List<Integer> zones, boolean confirmed, List<String> source) {}

    private record CautionLine(
            String id,
            String text,
            @Nullable String fact,
            @Nullable List<String> values,
            List<String> source) {

        HusbandryRules.Caution caution() {
            return new HusbandryRules.Caution(id, text, fact, Objects.requireNonNullElse(values, List.of()), source);
        }
    }
}
