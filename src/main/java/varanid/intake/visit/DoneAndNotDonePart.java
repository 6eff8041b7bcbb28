package varanid.intake.visit;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.springframework.stereotype.Component;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.quarantine.Ask;
import varanid.intake.quarantine.ClockReading;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.FollowUps;
import varanid.intake.quarantine.FollowedTask;

/** How it is kept, how its quarantine stands, and what has been done and not done. */
@Component
class DoneAndNotDonePart implements PartReader {

    private static final int MOST_DONE = 6;
    private static final int MOST_TO_DO = 4;

    private final FollowUps followUps;
    private final HandOverTexts texts;

    DoneAndNotDonePart(FollowUps followUps, HandOverTexts texts) {
        this.followUps = followUps;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.DONE_AND_NOT_DONE;
    }

    @Override
    public List<Statement> read(Visit visit) {
        return followUps
                .find(visit.organisationId(), visit.zone(), visit.animalId(), visit.today())
                .map(followUp -> said(visit, followUp))
                .orElse(List.of());
    }

    private List<Statement> said(Visit visit, FollowUp followUp) {
        List<Statement> said = new ArrayList<>();
        said.add(Statement.of(
                "room",
                Basis.RECORDED,
                texts.label("room"),
                followUp.room().map(FollowUp.Place::name).orElseGet(() -> switch (followUp.where()) {
                    case NOT_PLACED -> texts.say("not-placed");
                    case GONE -> texts.say("gone");
                    case RESIDENT, IN_QUARANTINE -> texts.say("resident");
                })));
        if (followUp.where() == FollowUp.Where.IN_QUARANTINE) {
            followUp.clock().ifPresent(clock -> clock(visit, clock, said));
        }
        Set<String> asked = new HashSet<>();
        for (Ask ask : followUp.asks()) {
            // The same may have occurred at several looks; the first is since when it waits.
            if (!asked.add(ask.words())) {
                continue;
            }
            said.add(Statement.of("waits", Basis.COMPUTED, texts.label("waits"), ask.words())
                    .on(ask.on())
                    .qualified(ask.reason()));
        }
        tasks(followUp, said);
        return said;
    }

    private void clock(Visit visit, ClockReading clock, List<Statement> said) {
        String text = clock.standing()
                .fold(
                        empty -> "",
                        running -> texts.say(
                                "in-quarantine",
                                "day",
                                Long.toString(ChronoUnit.DAYS.between(running.start(), visit.today())),
                                "start",
                                ReaderDates.PAPER.shortDay(running.start()),
                                "release",
                                ReaderDates.PAPER.shortDay(running.earliestRelease())),
                        held -> texts.say("in-quarantine-held", "start", ReaderDates.PAPER.shortDay(held.start())));
        if (!text.isEmpty()) {
            said.add(Statement.of("quarantine", Basis.COMPUTED, texts.label("quarantine"), text)
                    .qualified(clock.vetRelease() ? texts.say("needs-vet") : null));
        }
    }

    private void tasks(FollowUp followUp, List<Statement> said) {
        followUp.toDo().stream()
                .sorted(Comparator.comparing((FollowedTask task) -> task.task().due()))
                .limit(MOST_TO_DO)
                .forEach(task -> said.add(toDo(task)));
        followUp.tasks().stream()
                .filter(task -> task.state() == FollowedTask.State.DONE)
                .sorted(Comparator.comparing(
                                (FollowedTask task) -> task.doneOn().orElse(LocalDate.MIN))
                        .reversed())
                .limit(MOST_DONE)
                .forEach(task -> said.add(Statement.of(
                                "task-done",
                                Basis.RECORDED,
                                texts.label("task-done"),
                                task.task().title())
                        .on(task.doneOn().orElse(null))
                        .weighing(Statement.Weight.SMALL)));
    }

    private Statement toDo(FollowedTask task) {
        boolean overdue = task.state() == FollowedTask.State.OVERDUE;
        String code = overdue ? "task-overdue" : "task-open";
        return Statement.of(code, Basis.COMPUTED, texts.label(code), task.task().title())
                .on(task.task().due())
                .weighing(overdue ? Statement.Weight.STRONG : Statement.Weight.PLAIN);
    }
}
