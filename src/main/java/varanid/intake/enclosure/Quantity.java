package varanid.intake.enclosure;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Temperature;

/** What is measured, and where. */
public enum Quantity {
    /** The surface under the lamp, by infrared. */
    BASKING_SURFACE(Temperature.Place.BASKING_SURFACE),
    /** Air at the warm end. */
    WARM_AIR(Temperature.Place.BACKGROUND),
    /** Air at the cool end. */
    COOL_AIR(Temperature.Place.BACKGROUND),
    /** The lowest air temperature of the night. */
    NIGHT_MINIMUM(Temperature.Place.BACKGROUND),
    /** The coldest surface, such as a glass wall, by infrared. */
    COLDEST_SURFACE(Temperature.Place.BACKGROUND),
    /** Water that it can lie in. */
    WATER(Temperature.Place.BACKGROUND),
    /** Skin of the animal, by infrared. */
    SKIN(Temperature.Place.SKIN),
    /** Warm air minus cool air, in degrees Celsius of difference. Worked out, not measured. */
    GRADIENT(null),
    /** Relative humidity, in percent, at the temperature that is stated with it. */
    HUMIDITY(null);

    private final Temperature.@Nullable Place place;

    Quantity(Temperature.@Nullable Place place) {
        this.place = place;
    }

    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Where its temperature is read; empty for what is no temperature. */
    public Optional<Temperature.Place> place() {
        return Optional.ofNullable(place);
    }

    public static Optional<Quantity> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }
}
