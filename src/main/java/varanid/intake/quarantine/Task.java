package varanid.intake.quarantine;

import java.time.LocalDate;

/**
 * One thing to do on certain days.
 *
 * @param kind what sort
 * @param ordinal which one of its kind in the plan, from 1; with the kind it stays the same when dates move
 * @param due the first day that is good
 * @param latest the last day that is good, not before {@code due}
 * @param title a few words
 * @param instruction how
 * @param source who says so
 */
public record Task(
        TaskKind kind, int ordinal, LocalDate due, LocalDate latest, String title, String instruction, String source) {

    public Task {
        if (ordinal < 1 || latest.isBefore(due)) {
            throw new IllegalArgumentException("no task: " + kind + " " + ordinal + " from " + due + " to " + latest);
        }
    }
}
