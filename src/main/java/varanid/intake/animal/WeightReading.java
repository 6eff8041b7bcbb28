package varanid.intake.animal;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Mass;
import varanid.intake.measures.MassUnit;
import varanid.intake.measures.Resolution;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/**
 * A weight as it was read.
 *
 * @param value the number read
 * @param unit its UCUM code
 * @param grams the same in grams, exactly
 * @param resolution the scale's smallest step, in the same unit
 * @param scale which scale
 * @param occurredAt when
 * @param confirmed whether the person stands by an unlikely value
 */
@Schema(name = "Weight")
public record WeightReading(
        BigDecimal value,
        String unit,
        BigDecimal grams,
        @Nullable BigDecimal resolution,
        @Nullable String scale,
        Instant occurredAt,
        boolean confirmed) {

    static WeightReading of(
            Mass mass, @Nullable Resolution resolution, @Nullable String scale, Instant occurredAt, boolean confirmed) {
        return new WeightReading(
                mass.value(),
                mass.unit().code(),
                mass.grams(),
                resolution == null ? null : resolution.step(),
                scale,
                occurredAt,
                confirmed);
    }

    public Mass mass() {
        return new Mass(value, MassUnit.find(unit).orElseThrow());
    }

    /** What a person should look at in it. */
    public List<Remark> listRemarks(String pointer) {
        List<Remark> remarks = new ArrayList<>();
        if (!mass().isPlausible()) {
            remarks.add(new Remark(
                    pointer + "/value", "no monitor is known to weigh this; it was confirmed by whoever read it"));
        }
        if (resolution == null) {
            remarks.add(new Remark(
                    pointer + "/resolution", "without the scale's smallest step a later change cannot be judged well"));
        } else {
            Readings.remarkOnSteps(pointer, value, resolution).ifPresent(remarks::add);
        }
        return remarks;
    }

    /**
     * Reads one; a body may have further fields of its own.
     *
     * @param at when, as the body says; now where it does not
     */
    public static Supplier<WeightReading> reader(JsonFields fields, Given<Instant> at, Present present) {
        Given<BigDecimal> value =
                Readings.value(fields).check(number -> number.signum() > 0, "is zero", "a number greater than zero");
        Given<MassUnit> unit = fields.choice("unit", List.of(MassUnit.values()), MassUnit::code)
                .required();
        Given<Resolution> resolution = Readings.resolution(fields);
        Given<String> scale = fields.text("scale", Readings.LONGEST_INSTRUMENT);
        boolean confirmed = fields.flag("confirmed").orElse(false);
        if (value.isGiven() && unit.isGiven() && !confirmed) {
            Mass mass = new Mass(value.get(), unit.get());
            if (!mass.isPlausible()) {
                value.fault(
                        "is " + mass.grams().toPlainString() + " g, which no monitor weighs",
                        Mass.LEAST_PLAUSIBLE_GRAMS + " to " + Mass.GREATEST_PLAUSIBLE_GRAMS
                                + " g; or confirmed: true, where that is what the scale showed");
            }
        }
        return () -> of(
                new Mass(value.get(), unit.get()),
                resolution.orNull(),
                scale.orNull(),
                at.orElse(present.now()),
                confirmed);
    }
}
