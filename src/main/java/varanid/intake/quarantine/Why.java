package varanid.intake.quarantine;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/** One reason for the date a clock shows. */
public sealed interface Why {

    /** The event it comes from. */
    UUID event();

    /** In plain words. */
    String text();

    /** Day 0 is that of the last restart. */
    record Starts(UUID event, LocalDate on, String because) implements Why {
        @Override
        public String text() {
            return "its days count from " + words(on) + ": " + because;
        }
    }

    /** So many days are needed. */
    record Needs(UUID event, Optional<UUID> animal, int days, String because) implements Why {
        @Override
        public String text() {
            return "it takes " + count(days) + ": " + because;
        }
    }

    /** So many days did not count. */
    record Paused(UUID event, LocalDate from, LocalDate to, int days, String because) implements Why {
        @Override
        public String text() {
            return count(days) + " from " + words(from) + " did not count: " + because;
        }
    }

    /** So many days without something. */
    record Clear(UUID event, LocalDate until, int days, String without) implements Why {
        @Override
        public String text() {
            return count(days) + " without " + without + " end on " + words(until);
        }
    }

    /** A vet, or the end of a treatment, is waited for. */
    record Waits(UUID event, LocalDate since, boolean forTreatment, String because) implements Why {
        @Override
        public String text() {
            return "it waits since " + words(since) + " for " + (forTreatment ? "the end of treatment" : "a vet's word")
                    + ": " + because;
        }
    }

    /** A date as people write it, with its day of the week. */
    static String words(LocalDate date) {
        return DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH).format(date);
    }

    private static String count(int days) {
        return days == 1 ? "1 day" : days + " days";
    }
}
