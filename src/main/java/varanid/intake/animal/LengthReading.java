package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
public record LengthReading(
        Part of,
        BigDecimal value,
        String unit,
        BigDecimal millimetres,
        @Nullable BigDecimal resolution,
        @Nullable String tool,
        Instant occurredAt,
        boolean confirmed) {

    /** Snout to vent and tail may differ from the total by this part of it; our own proposal. */
    private static final BigDecimal LENGTHS_MAY_DIFFER_BY = new BigDecimal("0.03");

    /** What was measured, and within which millimetres it is believed without asking; our own proposal. */
    public enum Part {
        /** Tip of the snout to the vent. */
        SNOUT_VENT("35", "1600"),
        /** Vent to the tip of the tail; nothing where it is lost. */
        TAIL("0", "2400"),
        /** Tip of the snout to the tip of the tail. */
        TOTAL("35", "4000"),
        /** Across the root of the tail, just behind the hind legs. */
        TAIL_ROOT_WIDTH("2", "300");

        private final BigDecimal least;
        private final BigDecimal greatest;

        Part(String least, String greatest) {
            this.least = new BigDecimal(least);
            this.greatest = new BigDecimal(greatest);
        }

        @JsonValue
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /** Whether a monitor could measure this. */
        boolean isPlausible(Length length) {
            return length.isBetweenMillimetres(least, greatest);
        }

        String range() {
            return least + " to " + greatest + " mm";
        }
    }

    /**
     * Whether snout to vent and tail make the total, taking the first of each; nothing where one of them is missing.
     *
     * @param readings of one animal at one time
     */
    public static Optional<Remark> findSumRemark(String pointer, List<LengthReading> readings) {
        Optional<BigDecimal> body = first(readings, Part.SNOUT_VENT);
        Optional<BigDecimal> tail = first(readings, Part.TAIL);
        Optional<BigDecimal> total = first(readings, Part.TOTAL);
        if (body.isEmpty() || tail.isEmpty() || total.isEmpty()) {
            return Optional.empty();
        }
        BigDecimal sum = body.get().add(tail.get());
        BigDecimal difference = sum.subtract(total.get()).abs();
        if (difference.compareTo(total.get().multiply(LENGTHS_MAY_DIFFER_BY)) <= 0) {
            return Optional.empty();
        }
        return Optional.of(new Remark(
                pointer,
                "snout to vent and tail make " + sum.toPlainString() + " mm, the total is "
                        + total.get().toPlainString() + " mm: more than 3 % apart, so one of them was misread"));
    }

    private static Optional<BigDecimal> first(List<LengthReading> readings, Part part) {
        return readings.stream()
                .filter(reading -> reading.of() == part)
                .map(LengthReading::millimetres)
                .findFirst();
    }

    /** What a person should look at in it. */
    public List<Remark> listRemarks(String pointer) {
        List<Remark> remarks = new ArrayList<>();
        if (!of.isPlausible(new Length(value, LengthUnit.find(unit).orElseThrow()))) {
            remarks.add(new Remark(
                    pointer + "/value", "no monitor is known to measure this; it was confirmed by whoever read it"));
        }
        if (resolution != null) {
            Readings.remarkOnSteps(pointer, value, resolution).ifPresent(remarks::add);
        }
        return remarks;
    }

    /**
     * Reads one; a body may have further fields of its own.
     *
     * @param at when, as the body says; now where it does not
     */
    public static Supplier<LengthReading> reader(JsonFields fields, Given<Instant> at, Present present) {
        Given<Part> of = fields.choice("of", List.of(Part.values()), Part::code).required();
        Given<BigDecimal> value = Readings.value(fields)
                .check(
                        number -> number.signum() > 0
                                || of.find().filter(part -> part != Part.TAIL).isEmpty(),
                        "is zero",
                        "a number greater than zero");
        Given<LengthUnit> unit = fields.choice("unit", List.of(LengthUnit.values()), LengthUnit::code)
                .required();
        Given<Resolution> resolution = Readings.resolution(fields);
        Given<String> tool = fields.text("tool", Readings.LONGEST_INSTRUMENT);
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
            return new LengthReading(
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
