package varanid.intake.enclosure;

/**
 * Air of a temperature and a relative humidity, over water.
 *
 * <p>Saturation after Magnus with the coefficients of Alduchov and Eskridge 1996, for -40 to 60 °C; the pressure
 * enhancement factor, about 1.004, is left out. Against the equation of the ASHRAE handbook it is within 0.3 % in pressure
 * and 0.1 °C in dew point for 0 to 50 °C.
 *
 * @param celsius temperature, -40 to 60
 * @param humidityPercent relative humidity, above 0 up to 100
 */
public record MoistAir(double celsius, double humidityPercent) {

    private static final double LOWEST_CELSIUS = -40;
    private static final double HIGHEST_CELSIUS = 60;

    private static final double HECTOPASCALS = 6.1094;
    private static final double SLOPE = 17.625;
    private static final double OFFSET_CELSIUS = 243.04;

    /** Grams of water vapour in a cubic metre, per hectopascal and kelvin: the gas constant of water vapour. */
    private static final double GRAM_KELVIN_PER_HECTOPASCAL = 216.679;

    private static final double KELVIN_AT_ZERO_CELSIUS = 273.15;

    /** @throws IllegalArgumentException outside the temperatures it holds for, or where the humidity is none */
    public MoistAir {
        requireCovered(celsius);
        if (!(humidityPercent > 0 && humidityPercent <= 100)) {
            throw new IllegalArgumentException(
                    "a relative humidity is above 0 and at most 100 %, not " + humidityPercent);
        }
    }

    /** Whether the equations hold for that temperature. */
    public static boolean isCovered(double celsius) {
        return celsius >= LOWEST_CELSIUS && celsius <= HIGHEST_CELSIUS;
    }

    /** Pressure of water vapour in saturated air, in hectopascals. */
    public static double saturationHectopascals(double celsius) {
        requireCovered(celsius);
        return HECTOPASCALS * Math.exp(SLOPE * celsius / (OFFSET_CELSIUS + celsius));
    }

    private static void requireCovered(double celsius) {
        if (!isCovered(celsius)) {
            throw new IllegalArgumentException("the equations hold from -40 to 60 degrees Celsius, not for " + celsius);
        }
    }

    /** Pressure of the water vapour in it, in hectopascals. */
    public double vapourHectopascals() {
        return saturationHectopascals(celsius) * humidityPercent / 100;
    }

    /** The temperature at or below which a surface gets wet. */
    public double dewPointCelsius() {
        double exponent = Math.log(humidityPercent / 100) + SLOPE * celsius / (OFFSET_CELSIUS + celsius);
        return OFFSET_CELSIUS * exponent / (SLOPE - exponent);
    }

    /** How much vapour pressure it lacks to be saturated, in kilopascals. */
    public double deficitKilopascals() {
        return (saturationHectopascals(celsius) - vapourHectopascals()) / 10;
    }

    /** Water in it, in grams per cubic metre. */
    public double gramsPerCubicMetre() {
        return GRAM_KELVIN_PER_HECTOPASCAL * vapourHectopascals() / (celsius + KELVIN_AT_ZERO_CELSIUS);
    }

    /**
     * The relative humidity of the same moisture at another temperature or on a surface, in percent. More than 100 means
     * that water settles there.
     *
     * @param otherCelsius -40 to 60
     */
    public double humidityPercentAt(double otherCelsius) {
        return 100 * vapourHectopascals() / saturationHectopascals(otherCelsius);
    }
}
