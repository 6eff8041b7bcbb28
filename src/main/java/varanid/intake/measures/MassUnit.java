package varanid.intake.measures;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;

/** The units a mass may be given in. Pounds and ounces are avoirdupois: 1 lb = 453.59237 g exactly (1959 agreement). */
public enum MassUnit {
    GRAM("g", "1"),
    KILOGRAM("kg", "1000"),
    OUNCE("[oz_av]", "28.349523125"),
    POUND("[lb_av]", "453.59237");

    private final String code;
    private final BigDecimal grams;

    MassUnit(String code, String grams) {
        this.code = code;
        this.grams = new BigDecimal(grams);
    }

    /** The UCUM code. */
    public String code() {
        return code;
    }

    /** How many grams one of it is, exactly. */
    public BigDecimal grams() {
        return grams;
    }

    public static Optional<MassUnit> find(String code) {
        return Arrays.stream(values()).filter(unit -> unit.code.equals(code)).findFirst();
    }
}
