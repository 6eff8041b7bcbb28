package varanid.intake.quarantine;

import java.time.LocalDate;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Query;

/** The day that something is asked for. */
final class AsOf {

    static final int FURTHEST_DAYS = 366;

    private AsOf() {}

    /**
     * The parameter {@code asOf}, else today; no further ahead than anybody plans.
     *
     * @throws varanid.intake.platform.web.ProblemException 422 with every fault of the query
     */
    static LocalDate read(Query query, Present present) {
        LocalDate furthest = present.today().plusDays(FURTHEST_DAYS);
        LocalDate day = query.date("asOf")
                .check(date -> !date.isAfter(furthest), "lies too far ahead", furthest + " or earlier")
                .orElse(present.today());
        query.orThrow();
        return day;
    }
}
