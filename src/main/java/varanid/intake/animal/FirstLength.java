package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Length;
import varanid.intake.measures.LengthUnit;
import varanid.intake.measures.Resolution;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/**
 * A length as it was read.
 *
 * @param of what of the animal
 * @param value the number read
 * @param unit its UCUM code
 * @param millimetres the same in millimetres, exactly
 * @param resolution the tool's smallest step, in the same unit
 * @param tool which tool
 * @param occurredAt when
 * @param confirmed whether the person stands by an unlikely value
 */
@Schema(name = "Length")
record FirstLength(
        Part of,
        BigDecimal value,
        String unit,
        BigDecimal millimetres,
        @Nullable BigDecimal resolution,
        @Nullable String tool,
        Instant occurredAt,
        boolean confirmed) {

    /** What was measured, and within which millimetres it is believed without asking; our own proposal. */
    enum Part {
        /** Tip of the snout to the vent. */
        SNOUT_VENT("35", "1600"),
        /** Vent to the tip of the tail; nothing where it is lost. */
        TAIL("0", "2400"),
        /** Tip of the snout to the tip of the tail. */
        TOTAL("35", "4000");

        private final BigDecimal least;
        private final BigDecimal greatest;

        Part(String least, String greatest) {
            this.least = new BigDecimal(least);
            this.greatest = new BigDecimal(greatest);
        }

        @JsonValue
        String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        boolean isPlausible(Length length) {
            return length.isBetweenMillimetres(least, greatest);
        }

        String range() {
            return least + " to " + greatest + " mm";
        }
    }

    boolean isPlausible() {
        return of.isPlausible(new Length(value, LengthUnit.find(unit).orElseThrow()));
    }

    static Supplier<FirstLength> reader(JsonFields fields, Present present) {
        Given<Part> of = fields.choice("of", List.of(Part.values()), Part::code).required();
        Given<BigDecimal> value = Readings.value(fields);
        Given<LengthUnit> unit = fields.choice("unit", List.of(LengthUnit.values()), LengthUnit::code)
                .required();
        Given<Resolution> resolution = Readings.resolution(fields);
        Given<String> tool = fields.text("tool", Readings.LONGEST_INSTRUMENT);
        Given<Instant> at = fields.pastInstant("occurredAt", present);
        boolean confirmed = fields.flag("confirmed").orElse(false);
        if (of.isGiven() && value.isGiven() && unit.isGiven() && !confirmed) {
            Length length = new Length(value.get(), unit.get());
            if (!of.get().isPlausible(length)) {
                value.fault(
                        "is " + length.millimetres().toPlainString() + " mm, which no monitor measures",
                        of.get().range() + "; or confirmed: true, where that is what was measured");
            }
        }
        return () -> {
            Length length = new Length(value.get(), unit.get());
            return new FirstLength(
                    of.get(),
                    length.value(),
                    length.unit().code(),
                    length.millimetres(),
                    resolution.find().map(Resolution::step).orElse(null),
                    tool.orNull(),
                    at.orElse(present.now()),
                    confirmed);
        };
    }
}
