package varanid.intake.measures;

import java.util.Arrays;
import java.util.Optional;

/** The units a temperature may be given in. */
public enum TemperatureUnit {
    CELSIUS("Cel"),
    FAHRENHEIT("[degF]");

    private final String code;

    TemperatureUnit(String code) {
        this.code = code;
    }

    /** The UCUM code. */
    public String code() {
        return code;
    }

    public static Optional<TemperatureUnit> find(String code) {
        return Arrays.stream(values()).filter(unit -> unit.code.equals(code)).findFirst();
    }
}
