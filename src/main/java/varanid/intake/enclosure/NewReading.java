package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Length;
import varanid.intake.measures.LengthUnit;
import varanid.intake.measures.Temperature;
import varanid.intake.measures.TemperatureUnit;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonValue;

/** A reading that is to be kept, as it was sent. */
record NewReading(
        GivenReading given, Instant occurredAt, @Nullable UUID supersedes) {

    private static final int MOST_ENTRIES = 100;
    private static final int DECIMALS = 2;

    /** Within which a thermometer shows anything; what is likely is asked about afterwards. */
    private static final BigDecimal COLDEST = new BigDecimal(-100);

    private static final BigDecimal HOTTEST = new BigDecimal(1000);

    private static final BigDecimal HUNDRED = new BigDecimal(100);
    private static final BigDecimal LONGEST = new BigDecimal(100_000);

    /** More than any sun or lamp has at a bearable distance; a meter of UV-B power shows such numbers. */
    private static final BigDecimal HIGHEST_UV_INDEX = new BigDecimal(50);

    private static final BigDecimal HIGHEST_UV_NUMBER = new BigDecimal(100_000);

    private static final String ALONE =
            "a humidity means nothing without the temperature beside it: the same air is damp at a cold wall and dry"
                    + " under the lamp";
    private static final String TOGETHER =
            "{\"percent\": 65, \"at\": {\"value\": 28, \"unit\": \"Cel\"}}, both read at the same spot";

    private static final List<Quantity> TEMPERATURES = Arrays.stream(Quantity.values())
            .filter(each -> each.place().isPresent())
            .toList();

    static Supplier<NewReading> read(JsonFields fields, HusbandryRules rules, Present present) {
        if (Stream.of("temperatures", "humidity", "uvIndexAtBack", "facts", "sizes", "note")
                .noneMatch(name -> fields.field(name).isGiven())) {
            fields.fault("says nothing", "at least one of: temperatures, humidity, uvIndexAtBack, facts, sizes, note");
        }
        Given<Map<String, GivenReading.GivenTemperature>> temperatures =
                fields.entries("temperatures", MOST_ENTRIES, (code, value) -> readTemperatureOf(code, value, rules));
        Given<GivenReading.GivenHumidity> humidity = readHumidity(fields.field("humidity"), rules);
        Given<BigDecimal> uv = fields.decimal("uvIndexAtBack", BigDecimal.ZERO, HIGHEST_UV_NUMBER, DECIMALS)
                .check(
                        index -> index.compareTo(HIGHEST_UV_INDEX) <= 0,
                        "is no UV index: is it microwatts per square centimetre?",
                        "the UV index as its own meter shows it, 0 to " + HIGHEST_UV_INDEX.toPlainString());
        Given<Map<String, String>> facts = fields.entries(
                "facts",
                MOST_ENTRIES,
                (id, value) -> rules.findFact(id)
                        .map(fact -> value.choice(fact.values(), Function.identity()))
                        .orElseGet(() -> value.faulty(
                                "is no fact of an enclosure",
                                oneOf(rules.facts().stream().map(HusbandryRules.Fact::id)))));
        Given<Map<String, GivenReading.GivenLength>> sizes = fields.entries(
                "sizes",
                MOST_ENTRIES,
                (id, value) -> rules.findSize(id)
                        .map(size -> value.object(each -> readLength(each, size)))
                        .orElseGet(() -> value.faulty(
                                "is no size of an enclosure",
                                oneOf(rules.sizes().stream().map(HusbandryRules.Size::id)))));
        Given<String> note = fields.prose("note", 4000);
        Given<Instant> occurredAt = fields.pastInstant("occurredAt", present);
        Given<UUID> supersedes = fields.id("supersedes");
        return () -> {
            GivenReading given = new GivenReading(
                    temperatures.orElse(Map.of()),
                    humidity.orNull(),
                    uv.orNull(),
                    facts.orElse(Map.of()),
                    sizes.orElse(Map.of()),
                    note.orNull());
            if (given.saysNothing()) {
                throw new IllegalArgumentException("says nothing: every part of it is empty");
            }
            return new NewReading(given, occurredAt.orElse(present.now()), supersedes.orNull());
        };
    }

    private static Given<GivenReading.GivenTemperature> readTemperatureOf(
            String code, JsonValue value, HusbandryRules rules) {
        return TEMPERATURES.stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .map(quantity -> value.object(each -> readTemperature(each, quantity, rules)))
                .orElseGet(() -> value.faulty(
                        "is no temperature of an enclosure",
                        oneOf(TEMPERATURES.stream().map(Quantity::code))));
    }

    private static Given<GivenReading.GivenHumidity> readHumidity(JsonValue value, HusbandryRules rules) {
        if (value.isNumber()) {
            return value.faulty("is a number alone: " + ALONE, TOGETHER);
        }
        return value.object(fields -> {
            Given<BigDecimal> percent = fields.decimal("percent", BigDecimal.ZERO, HUNDRED, DECIMALS)
                    .required()
                    .check(number -> number.signum() > 0, "is zero, which no air has", "more than 0, up to 100");
            JsonValue at = fields.field("at");
            if (!at.isGiven()) {
                at.fault("is missing: " + ALONE, TOGETHER);
            }
            Given<GivenReading.GivenTemperature> there =
                    at.object(each -> readTemperature(each, Quantity.HUMIDITY, rules));
            return () -> new GivenReading.GivenHumidity(percent.get(), there.get());
        });
    }

    private static Supplier<GivenReading.GivenTemperature> readTemperature(
            JsonFields fields, Quantity quantity, HusbandryRules rules) {
        Given<BigDecimal> value =
                fields.decimal("value", COLDEST, HOTTEST, DECIMALS).required();
        Given<TemperatureUnit> unit = fields.choice("unit", List.of(TemperatureUnit.values()), TemperatureUnit::code)
                .required();
        boolean confirmed = fields.flag("confirmed").orElse(false);
        if (value.isGiven() && unit.isGiven() && !confirmed) {
            askAbout(value, new Temperature(value.get(), unit.get()), quantity, rules);
        }
        return () -> GivenReading.GivenTemperature.of(new Temperature(value.get(), unit.get()), confirmed);
    }

    /** A number that such a place hardly has is asked about, with what it would be in the other unit; never converted. */
    private static void askAbout(Given<BigDecimal> value, Temperature given, Quantity quantity, HusbandryRules rules) {
        Temperature.Place place = quantity.place().orElse(Temperature.Place.BACKGROUND);
        if (rules.isLikely(quantity.code(), place, given)) {
            return;
        }
        boolean hot = given.celsius().compareTo(place.highestLikelyCelsius()) > 0;
        Temperature other = new Temperature(
                given.value(),
                given.unit() == TemperatureUnit.CELSIUS ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS);
        value.fault(
                "is " + inBoth(given) + ", " + (hot ? "hotter" : "colder") + " than such a place is likely to be"
                        + (rules.isLikely(quantity.code(), place, other)
                                ? "; was it read as " + inBoth(other) + "?"
                                : "; as " + inBoth(other) + " it would be unlikely too"),
                "the unit that the thermometer shows, or confirmed: true, where " + inOwn(given)
                        + " is what it showed");
    }

    /** In its own unit first. */
    private static String inBoth(Temperature temperature) {
        return temperature.unit() == TemperatureUnit.CELSIUS
                ? inOwn(temperature) + " = " + rounded(temperature.fahrenheit()) + " [degF]"
                : inOwn(temperature) + " = " + rounded(temperature.celsius()) + " Cel";
    }

    private static String inOwn(Temperature temperature) {
        return temperature.value().toPlainString() + " " + temperature.unit().code();
    }

    private static String rounded(BigDecimal degrees) {
        return degrees.scale() > 1
                ? degrees.setScale(1, RoundingMode.HALF_UP).toPlainString()
                : degrees.toPlainString();
    }

    private static Supplier<GivenReading.GivenLength> readLength(JsonFields fields, HusbandryRules.Size size) {
        Given<BigDecimal> value =
                fields.decimal("value", BigDecimal.ZERO, LONGEST, DECIMALS).required();
        Given<LengthUnit> unit = fields.choice("unit", List.of(LengthUnit.values()), LengthUnit::code)
                .required();
        boolean confirmed = fields.flag("confirmed").orElse(false);
        if (value.isGiven() && unit.isGiven() && !confirmed) {
            Length length = new Length(value.get(), unit.get());
            if (!size.isLikely(length)) {
                value.fault(
                        "is " + length.millimetres().toPlainString() + " mm, which is hardly so",
                        size.likelyMillimetres().get(0).toPlainString() + " to "
                                + size.likelyMillimetres().get(1).toPlainString()
                                + " mm; or confirmed: true, where that is what was measured");
            }
        }
        return () -> GivenReading.GivenLength.of(new Length(value.get(), unit.get()), confirmed);
    }

    private static String oneOf(Stream<String> codes) {
        return codes.collect(Collectors.joining(", ", "one of: ", ""));
    }
}
