package varanid.intake.measures;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;

/** The units a length may be given in. 1 inch = 25.4 mm exactly (1959 agreement). */
public enum LengthUnit {
    MILLIMETRE("mm", "1"),
    CENTIMETRE("cm", "10"),
    INCH("[in_i]", "25.4");

    private final String code;
    private final BigDecimal millimetres;

    LengthUnit(String code, String millimetres) {
        this.code = code;
        this.millimetres = new BigDecimal(millimetres);
    }

    /** The UCUM code. */
    public String code() {
        return code;
    }

    /** How many millimetres one of it is, exactly. */
    public BigDecimal millimetres() {
        return millimetres;
    }

    public static Optional<LengthUnit> find(String code) {
        return Arrays.stream(values()).filter(unit -> unit.code.equals(code)).findFirst();
    }
}
