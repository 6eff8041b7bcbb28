package varanid.intake.enclosure;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Length;
import varanid.intake.measures.LengthUnit;
import varanid.intake.measures.Temperature;
import varanid.intake.measures.TemperatureUnit;

/**
 * A reading as it was given, and as it is kept: numbers as they were typed, with their units.
 *
 * @param temperatures code of the quantity to what was read
 * @param facts id of the fact to its value
 * @param sizes id of the size to what was measured
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record GivenReading(
        Map<String, GivenTemperature> temperatures,
        @Nullable GivenHumidity humidity,
        @Nullable BigDecimal uvIndexAtBack,
        Map<String, String> facts,
        Map<String, GivenLength> sizes,
        @Nullable String note) {

    GivenReading {
        temperatures = Map.copyOf(temperatures);
        facts = Map.copyOf(facts);
        sizes = Map.copyOf(sizes);
    }

    boolean saysNothing() {
        return temperatures.isEmpty()
                && humidity == null
                && uvIndexAtBack == null
                && facts.isEmpty()
                && sizes.isEmpty()
                && note == null;
    }

    /**
     * @param value the number read
     * @param unit its UCUM code
     * @param celsius the same in degrees Celsius; rounded to four decimals where it was converted
     * @param confirmed whether the person stands by an unlikely value
     */
    @Schema(name = "TemperatureReading")
    record GivenTemperature(BigDecimal value, String unit, BigDecimal celsius, boolean confirmed) {

        static GivenTemperature of(Temperature temperature, boolean confirmed) {
            return new GivenTemperature(
                    temperature.value(), temperature.unit().code(), temperature.celsius(), confirmed);
        }

        Temperature temperature() {
            return new Temperature(value, TemperatureUnit.find(unit).orElseThrow());
        }
    }

    /**
     * @param percent relative humidity
     * @param at the temperature of the air where it was read
     */
    @Schema(name = "HumidityReading")
    record GivenHumidity(BigDecimal percent, GivenTemperature at) {

        EnclosureReading.Humidity humidity() {
            return new EnclosureReading.Humidity(percent, at.temperature());
        }
    }

    /**
     * @param value the number read
     * @param unit its UCUM code
     * @param millimetres the same in millimetres, exactly
     * @param confirmed whether the person stands by an unlikely value
     */
    @Schema(name = "SizeReading")
    record GivenLength(BigDecimal value, String unit, BigDecimal millimetres, boolean confirmed) {

        static GivenLength of(Length length, boolean confirmed) {
            return new GivenLength(length.value(), length.unit().code(), length.millimetres(), confirmed);
        }

        Length length() {
            return new Length(value, LengthUnit.find(unit).orElseThrow());
        }
    }
}
