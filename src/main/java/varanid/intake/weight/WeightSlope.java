package varanid.intake.weight;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * How fast the weight goes up or down: the Theil-Sen slope on the logarithm of the mass.
 *
 * @param from day of the first weighing in it
 * @param to day of the last
 * @param weighingDays on how many different days, three or more
 * @param heavy on how many of them the animal may have been heavy
 * @param percentPerDay 100 times the slope of ln mass; a loss is negative
 * @param interval empty with fewer than five weighing days
 */
public record WeightSlope(
        LocalDate from, LocalDate to, int weighingDays, int heavy, double percentPerDay, Optional<Interval> interval) {

    /**
     * Where the slope lies, in percent a day.
     *
     * @param lowest lower end of the exact Kendall interval of what was displayed
     * @param highest its upper end
     * @param lowestWithRounding the lower end over everything the displays may hide
     * @param highestWithRounding the upper end over the same
     * @param coverage with which probability at least, scatter alone
     */
    public record Interval(
            double lowest, double highest, double lowestWithRounding, double highestWithRounding, double coverage) {}

    /** Local dates from the first to the last. */
    public int overDays() {
        return Math.toIntExact(ChronoUnit.DAYS.between(from, to));
    }

    /** What a rate in percent a day comes to over the days of the slope, in percent. */
    double percentOverAll(double percentPerDay) {
        return 100 * Math.expm1(percentPerDay / 100 * overDays());
    }
}
