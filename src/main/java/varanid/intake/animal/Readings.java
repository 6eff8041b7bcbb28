package varanid.intake.animal;

import java.math.BigDecimal;
import java.util.Optional;
import varanid.intake.measures.Resolution;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** What readings of all instruments have in common. */
final class Readings {

    static final int LONGEST_INSTRUMENT = 60;

    private static final BigDecimal LARGEST = new BigDecimal("10000000");
    private static final int DECIMALS = 6;

    private Readings() {}

    static Optional<Remark> remarkOnSteps(String pointer, BigDecimal value, BigDecimal step) {
        return new Resolution(step).canShow(value)
                ? Optional.empty()
                : Optional.of(new Remark(
                        pointer + "/resolution",
                        value.toPlainString() + " is no whole number of steps of " + step.toPlainString()));
    }

    static Given<BigDecimal> value(JsonFields fields) {
        return fields.decimal("value", BigDecimal.ZERO, LARGEST, DECIMALS).required();
    }

    static Given<Resolution> resolution(JsonFields fields) {
        return fields.decimal("resolution", BigDecimal.ZERO, LARGEST, DECIMALS)
                .map("the smallest step the instrument shows, in the unit of the value", Resolution::new);
    }
}
