package varanid.intake.weight;

import java.math.BigDecimal;
import java.math.RoundingMode;
import varanid.intake.platform.time.ReaderDates;

/** Changes of weight in words that a keeper understands. Advice and cautions are in the data. */
final class TrendWords {

    private static final double DAYS_OF_A_WEEK = 7;

    private TrendWords() {}

    /** What the scale showed. */
    static String grams(Weighing weighing) {
        return weighing.mass().value().toPlainString() + " "
                + switch (weighing.mass().unit()) {
                    case GRAM -> "g";
                    case KILOGRAM -> "kg";
                    case OUNCE -> "oz";
                    case POUND -> "lb";
                };
    }

    static String of(PercentChange change) {
        return "From " + grams(change.from()) + " on "
                + ReaderDates.PAPER.shortDay(change.from().day()) + " to " + grams(change.to()) + " on "
                + ReaderDates.PAPER.shortDay(change.to().day()) + ", " + days(change.overDays()) + ": "
                + percent(change.percent(), 1, RoundingMode.HALF_EVEN)
                + ". What the scales may hide allows anything from "
                + percent(change.lowest(), 1, RoundingMode.FLOOR) + " to "
                + percent(change.highest(), 1, RoundingMode.CEILING) + ".";
    }

    /** @param latest for how much that is in grams */
    static String of(WeightSlope slope, Weighing latest) {
        double inAWeek = 100 * Math.expm1(slope.percentPerDay() / 100 * DAYS_OF_A_WEEK);
        double gramsInAWeek = latest.mass().grams().doubleValue() * Math.abs(inAWeek) / 100;
        String text = "Through " + slope.weighingDays() + " weighing days from "
                + ReaderDates.PAPER.shortDay(slope.from()) + " to " + ReaderDates.PAPER.shortDay(slope.to())
                + ": " + percent(slope.percentPerDay(), 2, RoundingMode.HALF_EVEN)
                + " a day. At its weight now that is "
                + percent(inAWeek, 1, RoundingMode.HALF_EVEN) + " or about " + decimal(gramsInAWeek, 1)
                + " g in a week.";
        return text
                + slope.interval()
                        .map(it -> " With what chance and the scales may hide, the rate lies between "
                                + percent(it.lowestWithRounding(), 2, RoundingMode.FLOOR) + " and "
                                + percent(it.highestWithRounding(), 2, RoundingMode.CEILING)
                                + " a day; chance alone leaves"
                                + " it out in at most " + decimal(100 * (1 - it.coverage()), 1)
                                + " of 100 such series.")
                        .orElse(" That is too few days to say how sure it is.");
    }

    static String of(TrendEvidence evidence, Weighing latest) {
        return evidence.fold(two -> of(two.change()), it -> of(it.slope(), latest));
    }

    static String days(int days) {
        return days == 1 ? "1 day" : days + " days";
    }

    private static String percent(double percent, int decimals, RoundingMode rounding) {
        return percent(BigDecimal.valueOf(percent), decimals, rounding);
    }

    private static String percent(BigDecimal percent, int decimals, RoundingMode rounding) {
        BigDecimal rounded = percent.setScale(decimals, rounding);
        if (rounded.signum() == 0) {
            return "no change";
        }
        return (rounded.signum() < 0 ? "a loss of " : "a gain of ")
                + rounded.abs().stripTrailingZeros().toPlainString() + " %";
    }

    private static String decimal(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .toPlainString();
    }
}
