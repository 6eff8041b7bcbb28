package varanid.intake.infection;

/** What numbers must be, and how near two may lie before they count as the same. */
final class Numbers {

    /** Sums of rounded numbers that differ by less are the same: 1 - 0.1 has reached 0.9. */
    static final double SAME = 1e-12;

    private Numbers() {}

    static double fraction(String what, double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException(what + " lies from 0 to 1, not at " + value);
        }
        return value;
    }

    static double openFraction(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(what + " lies between 0 and 1, both excluded, not at " + value);
        }
        return value;
    }

    static int atLeast(int least, String what, int value) {
        if (value < least) {
            throw new IllegalArgumentException(what + " is at least " + least + ", not " + value);
        }
        return value;
    }

    static boolean reaches(double value, double target) {
        return value >= target - SAME;
    }
}
