package varanid.intake.enclosure;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.Animals;

/** Surroundings as they are sent. Letters of a source are explained in {@code sources}. */
@Schema(name = "Surroundings")
@JsonInclude(JsonInclude.Include.NON_NULL)
record SurroundingsView(
        UUID animalId,
        LocalDate asOf,

        @Schema(description = "the recorded one; none where nobody recorded it") @Nullable
        String species,

        String lifeStage,

        @Schema(description = "what is to be said of the whole")
        List<Text> notices,

        @Schema(description = "what was read, or has figures")
        List<QuantityView> quantities,

        @Schema(description = "none without a humidity") @Nullable
        MoistureView moisture,

        @Schema(description = "none without a UV index") @Nullable
        UvView uv,

        @Schema(description = "how it is set up, as far as somebody said")
        List<FactView> facts,

        List<SizeView> sizes,

        @Schema(description = "what deserves advice; no points of illness")
        List<SignView> signs,

        @Schema(description = "findings whose answers the signs may explain; they keep their points")
        List<LessCertainView> lessCertain,

        @Schema(description = "conditions of a look that the skin temperature of that day means")
        List<String> lookConditions,

        List<CautionView> cautions,

        @Schema(description = "all that is not known, the most useful first")
        List<UnknownView> notKnown,

        @Schema(description = "the first of them, and how") List<Text> measureNext,

        @Schema(description = "what the letters of a source stand for")
        Map<String, String> sources) {

    private static final int NEXT = 3;

    /** Of what is worked out: more would be invented. */
    private static final int DECIMALS = 2;

    @Schema(name = "SurroundingsText")
    record Text(String id, String text) {}

    @Schema(name = "ReadWhen")
    record ReadView(
            UUID readingId,
            Instant occurredAt,
            LocalDate localDate,
            long ageDays,

            @Schema(description = "too old to speak of asOf")
            boolean stale) {

        static ReadView of(LatestReadings.Latest<?> latest) {
            return new ReadView(
                    latest.readingId(), latest.occurredAt(), latest.localDate(), latest.ageDays(), latest.stale());
        }
    }

    @Schema(name = "QuantityStanding")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record QuantityView(
            String quantity,

            @Schema(description = "in the unit beside it; none where it was not read") @Nullable
            BigDecimal value,

            @Schema(allowableValues = {"Cel", "K", "%"}) String unit,

            @Schema(description = "as it was typed, where that is a temperature") @Nullable
            Object given,

            @Schema(description = "none for what is worked out") @Nullable
            ReadView read,

            @Schema(description = "what it rests on is too old to speak of asOf")
            boolean stale,

            @Schema(
                    allowableValues = {
                        "not-read",
                        "not-judged",
                        "no-figures",
                        "below",
                        "within",
                        "above",
                        "sources-disagree"
                    })
            String standing,

            @Schema(description = "whether two of the ranges to judge by have no value in common")
            boolean rangesDisagree,

            List<RangeView> ranges) {}

    @Schema(name = "HusbandryRange")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record RangeView(
            @Schema(allowableValues = {"published", "common-practice", "proposal", "field"})
            String kind,

            @Nullable BigDecimal from,
            @Nullable BigDecimal to,
            @Schema(allowableValues = {"Cel", "K", "%"}) String unit,

            @Schema(allowableValues = {"below", "within", "above"}) @Nullable
            String side,

            @Schema(description = "false for figures of wild animals, and where what it depends on is not so")
            boolean applies,

            @Nullable OnlyWhereView onlyWhere,
            String note,
            List<String> source) {}

    @Schema(name = "RangeOnlyWhere")
    record OnlyWhereView(String quantity, BigDecimal atMostCelsius) {}

    @Schema(name = "Moisture")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record MoistureView(
            ReadView read,
            BigDecimal humidityPercent,
            BigDecimal atCelsius,

            @Schema(description = "a surface at or below gets wet")
            BigDecimal dewPointCelsius,

            @Schema(description = "coldest surface minus dew point, a difference") @Nullable
            BigDecimal marginCelsius,

            BigDecimal deficitKilopascals,
            BigDecimal gramsPerCubicMetre,

            @Schema(description = "what the same moisture comes to there; above 100, water settles")
            List<HumidityAt> humidityAt) {}

    @Schema(name = "HumidityAt")
    record HumidityAt(
            String quantity,
            BigDecimal celsius,
            BigDecimal percent,

            @Schema(description = "read on the same round as the humidity")
            boolean together) {}

    @Schema(name = "UvLight")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record UvView(
            ReadView read,
            BigDecimal index,

            @Schema(description = "zones at whose animals such a maximum was recorded; may be none or two")
            SortedSet<Integer> zones,

            @Schema(description = "the zones of the species; none where nobody knows") @Nullable
            List<Integer> speciesZones,

            @Schema(description = "whether the published assessment of the species was seen") @Nullable
            Boolean confirmed,

            @Nullable List<String> source,

            @Schema(description = "from this index on it is unsafe")
            BigDecimal unsafeFrom) {}

    @Schema(name = "EnclosureFact")
    record FactView(String fact, String question, String value, ReadView read) {}

    @Schema(name = "EnclosureSize")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record SizeView(
            String size,
            String question,
            GivenReading.@Nullable GivenLength given,
            @Nullable ReadView read,
            List<PracticeView> practice) {}

    @Schema(name = "EnclosurePractice")
    record PracticeView(String kind, String text, List<String> source) {}

    @Schema(name = "SurroundingsSign")
    record SignView(
            String code,
            String advice,

            @Schema(description = "rests on readings too old to speak of asOf")
            boolean stale,

            List<String> source) {}

    @Schema(name = "LessCertain")
    record LessCertainView(String finding, List<String> because) {}

    @Schema(name = "SurroundingsCaution")
    record CautionView(String id, String text, List<String> source) {}

    @Schema(name = "NotKnown")
    record UnknownView(
            String id,

            @Schema(allowableValues = {"never-read", "stale", "said-unknown"})
            String why) {}

    static SurroundingsView of(Animals.Newcomer animal, LocalDate asOf, LatestReadings latest, HusbandryRules rules) {
        return new Maker(animal, latest, rules).make(asOf);
    }

    private static final class Maker {

        private final Animals.Newcomer animal;
        private final String species;
        private final String lifeStage;
        private final LatestReadings latest;
        private final HusbandryRules rules;
        private final Surroundings judged;

        Maker(Animals.Newcomer animal, LatestReadings latest, HusbandryRules rules) {
            this.animal = animal;
            this.species = animal.species().orElse("");
            this.lifeStage = animal.lifeStage().code();
            this.latest = latest;
            this.rules = rules;
            this.judged = EnclosureReadings.judge(animal, latest);
        }

        SurroundingsView make(LocalDate asOf) {
            List<QuantityView> quantities = Arrays.stream(Quantity.values())
                    .flatMap(each -> quantity(each).stream())
                    .toList();
            List<LatestReadings.Unknown> unknown = latest.listUnknown();
            return new SurroundingsView(
                    animal.id(),
                    asOf,
                    animal.species().orElse(null),
                    lifeStage,
                    notices(quantities),
                    quantities,
                    moisture().orElse(null),
                    uv().orElse(null),
                    rules.facts().stream()
                            .flatMap(fact -> latest.findFact(fact.id()).stream()
                                    .map(each -> new FactView(fact.id(), fact.text(), each.value(), ReadView.of(each))))
                            .toList(),
                    rules.sizes().stream().map(this::size).toList(),
                    judged.signs().stream()
                            .map(each -> new SignView(
                                    each.code(),
                                    each.advice(),
                                    judged.staleSigns().contains(each.code()),
                                    each.source()))
                            .toList(),
                    judged.lessCertain().entrySet().stream()
                            .map(each -> new LessCertainView(each.getKey(), List.copyOf(each.getValue())))
                            .toList(),
                    judged.lookConditions(),
                    judged.cautions().stream()
                            .map(each -> new CautionView(each.id(), each.text(), each.source()))
                            .toList(),
                    unknown.stream()
                            .map(each -> new UnknownView(each.id(), code(each.why())))
                            .toList(),
                    unknown.stream()
                            .limit(NEXT)
                            .map(each -> new Text(each.id(), rules.question(each.id())))
                            .toList(),
                    new TreeMap<>(rules.sources()));
        }

        private List<Text> notices(List<QuantityView> quantities) {
            List<String> codes = new ArrayList<>(List.of("not-illness"));
            if (latest.isEmpty()) {
                codes.add("no-readings");
            }
            if (animal.species().isEmpty()) {
                codes.add("no-species");
            } else if (rules.ranges().stream()
                    .noneMatch(each -> each.kind() != HusbandryRange.Kind.FIELD
                            && !each.species().equals(HusbandryRange.ANY)
                            && each.isFor(species, lifeStage))) {
                codes.add("no-figures");
            }
            if (quantities.stream()
                    .anyMatch(each -> each.rangesDisagree()
                            || each.standing().equals(code(Surroundings.Standing.SOURCES_DISAGREE)))) {
                codes.add("sources-disagree");
            }
            if (latest.hasStale()) {
                codes.add("stale");
            }
            if (moisture().stream().anyMatch(each -> each.humidityAt().stream().anyMatch(at -> !at.together()))) {
                codes.add("not-together");
            }
            return codes.stream().map(each -> new Text(each, rules.text(each))).toList();
        }

        /** What was read or worked out, or has figures for this animal. */
        private Optional<QuantityView> quantity(Quantity quantity) {
            Optional<Surroundings.Judged> value = judged.quantities().stream()
                    .filter(each -> each.quantity() == quantity)
                    .findFirst();
            List<Surroundings.BesideRange> beside =
                    value.map(Surroundings.Judged::ranges).orElse(List.of());
            List<HusbandryRange> figures = rules.ranges().stream()
                    .filter(each -> each.quantity() == quantity && each.isFor(species, lifeStage))
                    .toList();
            Optional<? extends LatestReadings.Latest<?>> read = latest.find(quantity.code());
            if (value.isEmpty() && read.isEmpty() && figures.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(new QuantityView(
                    quantity.code(),
                    value.map(Surroundings.Judged::value).orElse(null),
                    unit(quantity),
                    read.map(LatestReadings.Latest::value).orElse(null),
                    read.map(ReadView::of).orElse(null),
                    isStale(quantity),
                    value.map(each -> code(each.standing())).orElse(read.isEmpty() ? "not-read" : "not-judged"),
                    disagree(figures),
                    value.isPresent()
                            ? beside.stream()
                                    .map(each -> range(each.range(), code(each.side()), each.applies()))
                                    .toList()
                            : figures.stream()
                                    .map(each -> range(
                                            each,
                                            null,
                                            each.kind() != HusbandryRange.Kind.FIELD && each.onlyWhere() == null))
                                    .toList()));
        }

        private boolean isStale(Quantity quantity) {
            List<Quantity> restsOn =
                    quantity == Quantity.GRADIENT ? List.of(Quantity.WARM_AIR, Quantity.COOL_AIR) : List.of(quantity);
            return restsOn.stream()
                    .anyMatch(each -> latest.find(each.code())
                            .filter(LatestReadings.Latest::stale)
                            .isPresent());
        }

        private static boolean disagree(List<HusbandryRange> figures) {
            List<HusbandryRange> toJudgeBy = figures.stream()
                    .filter(each -> each.kind() != HusbandryRange.Kind.FIELD)
                    .toList();
            return toJudgeBy.stream().anyMatch(one -> toJudgeBy.stream().anyMatch(other -> !one.meets(other)));
        }

        private static RangeView range(HusbandryRange range, @Nullable String side, boolean applies) {
            HusbandryRange.OnlyWhere where = range.onlyWhere();
            return new RangeView(
                    range.kind().code(),
                    range.lowest(),
                    range.highest(),
                    unit(range.quantity()),
                    side,
                    applies,
                    where == null ? null : new OnlyWhereView(where.quantity().code(), where.atMost()),
                    range.note(),
                    range.source());
        }

        private Optional<MoistureView> moisture() {
            Optional<LatestReadings.Latest<GivenReading.GivenHumidity>> read = latest.findHumidity();
            return judged.moisture()
                    .flatMap(moisture -> read.map(humidity -> new MoistureView(
                            ReadView.of(humidity),
                            humidity.value().percent(),
                            humidity.value().at().celsius(),
                            rounded(moisture.dewPointCelsius()),
                            moisture.marginCelsius().map(Maker::rounded).orElse(null),
                            rounded(moisture.deficitKilopascals()),
                            rounded(moisture.gramsPerCubicMetre()),
                            moisture.humidityPercentAt().entrySet().stream()
                                    .flatMap(each -> latest.findTemperature(each.getKey()).stream()
                                            .map(there -> new HumidityAt(
                                                    each.getKey().code(),
                                                    there.value().celsius(),
                                                    rounded(each.getValue()),
                                                    there.readingId().equals(humidity.readingId()))))
                                    .toList())));
        }

        private Optional<UvView> uv() {
            Optional<LatestReadings.Latest<BigDecimal>> read = latest.findUvIndex();
            return judged.uv()
                    .flatMap(uv -> read.map(index -> new UvView(
                            ReadView.of(index),
                            uv.index(),
                            uv.zones(),
                            uv.species().map(UvZones.SpeciesZones::zones).orElse(null),
                            uv.species().map(UvZones.SpeciesZones::confirmed).orElse(null),
                            uv.species().map(UvZones.SpeciesZones::source).orElse(null),
                            rules.uv().unsafeFrom())));
        }

        private SizeView size(HusbandryRules.Size size) {
            Optional<LatestReadings.Latest<GivenReading.GivenLength>> read = latest.findSize(size.id());
            return new SizeView(
                    size.id(),
                    size.text(),
                    read.map(LatestReadings.Latest::value).orElse(null),
                    read.map(ReadView::of).orElse(null),
                    size.practice().stream()
                            .filter(each -> each.isFor(species, lifeStage))
                            .map(each -> new PracticeView(each.kind().code(), each.text(), each.source()))
                            .toList());
        }

        private static String unit(Quantity quantity) {
            return switch (quantity) {
                case GRADIENT -> "K";
                case HUMIDITY -> "%";
                default -> "Cel";
            };
        }

        private static BigDecimal rounded(double value) {
            return BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP);
        }

        private static String code(Enum<?> constant) {
            return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
