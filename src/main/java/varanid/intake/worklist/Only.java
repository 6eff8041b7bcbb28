package varanid.intake.worklist;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What <em>act now</em> can be narrowed to. Each is one stretch of an index, or one for each rank. */
enum Only {
    /** All that have to be seen to: urgent, worse, or with something due. */
    ALL,
    /** With something due or overdue. */
    DUE,
    /** With something overdue; those that waited longest first. */
    OVERDUE,
    /** Worse than at the look before. */
    WORSE,
    /** A vet within days, or sooner. */
    URGENT;

    static final List<Only> CHOICES = List.of(DUE, OVERDUE, WORSE, URGENT);

    String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The column whose day orders those of one rank. */
    String day() {
        return this == OVERDUE ? "due_until" : "due_from";
    }

    /** Where the list lies in the index, from first to last. */
    List<Stretch> stretches(LocalDate asOf) {
        return switch (this) {
            case ALL -> List.of(new Stretch(ActRank.STAT, ActRank.REST, asOf));
            case WORSE -> List.of(new Stretch(ActRank.STAT, ActRank.WORSE, Entry.NEVER));
            case URGENT -> List.of(new Stretch(ActRank.STAT, ActRank.URGENT, Entry.NEVER));
            case DUE -> ofEachRank(asOf);
            case OVERDUE -> ofEachRank(asOf.minusDays(1));
        };
    }

    private static List<Stretch> ofEachRank(LocalDate last) {
        return Arrays.stream(ActRank.values())
                .map(rank -> new Stretch(rank, rank, last))
                .toList();
    }

    /**
     * From the beginning of one rank to a day of another, all between included.
     *
     * @param first the rank it begins with
     * @param last the rank it ends in
     * @param lastDay of that rank
     */
    record Stretch(ActRank first, ActRank last, LocalDate lastDay) {}
}
