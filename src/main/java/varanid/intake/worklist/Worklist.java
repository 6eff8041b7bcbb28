package varanid.intake.worklist;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Service;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.SortedPage;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.RoundsItem;

/** Both lists, a page at a time, for the interface and for the page that people read. */
@Service
public class Worklist {

    /** A year, and a day of a leap year. */
    private static final int FARTHEST = 366;

    private final WorklistRows rows;
    private final WorklistFill fill;
    private final WorklistTexts texts;
    private final Clock clock;

    Worklist(WorklistRows rows, WorklistFill fill, WorklistTexts texts, Clock clock) {
        this.rows = rows;
        this.fill = fill;
        this.texts = texts;
        this.clock = clock;
    }

    /**
     * Whom to see to now.
     *
     * @param query {@code asOf}, {@code only}, {@code room}, {@code limit} and {@code cursor}
     * @throws ProblemException 400 for a fault of the query
     */
    public ResponseEntity<Items<ActNowItem>> actNow(Caller caller, Query query) {
        Given<LocalDate> day = day(caller, query);
        Given<Only> only = query.choice("only", Only.CHOICES, Only::code);
        Given<UUID> room = query.id("room");
        Only chosen = only.orElse(Only.ALL);
        SortedPage<ActPlace> page = query.page(ActPlace.form(chosen.day()));
        LocalDate asOf = day.orElse(today(caller));
        fill.require(caller.organisationId());
        List<Entry> found =
                rows.listActNow(caller.organisationId(), chosen, room.find(), asOf, page.after(), page.fetch());
        return page.reply(found, entry -> place(entry, chosen), new WorklistViews(texts, asOf)::actNow);
    }

    /**
     * The order to walk in.
     *
     * @param query {@code asOf}, {@code due}, {@code room}, {@code limit} and {@code cursor}
     * @throws ProblemException 400 for a fault of the query
     */
    public ResponseEntity<Items<RoundsItem>> rounds(Caller caller, Query query) {
        Given<LocalDate> day = day(caller, query);
        Given<UUID> room = query.id("room");
        Given<Boolean> due = query.choice("due", List.of(true, false), String::valueOf);
        SortedPage<RoundsPlace> page = query.page(RoundsPlace.FORM);
        LocalDate asOf = day.orElse(today(caller));
        fill.require(caller.organisationId());
        List<Entry> found = rows.listRounds(
                caller.organisationId(),
                room.find(),
                due.orElse(false) ? Optional.of(asOf) : Optional.empty(),
                page.after(),
                page.fetch());
        return page.reply(found, Worklist::place, new WorklistViews(texts, asOf)::rounds);
    }

    Given<LocalDate> day(Caller caller, Query query) {
        LocalDate today = today(caller);
        LocalDate last = today.plusDays(FARTHEST);
        String right = "a day from today, " + today + ", to " + last;
        return query.date("asOf")
                .check(
                        asked -> !asked.isBefore(today),
                        "is in the past: the work list shows what is true now, and what was due then may be done by now",
                        right)
                .check(asked -> !asked.isAfter(last), "is more than " + FARTHEST + " days ahead", right);
    }

    LocalDate today(Caller caller) {
        return Present.at(clock, caller.zone()).today();
    }

    private static ActPlace place(Entry entry, Only only) {
        return new ActPlace(
                entry.actRank().number(), only == Only.OVERDUE ? entry.dueUntil() : entry.dueFrom(), entry.animalId());
    }

    private static RoundsPlace place(Entry entry) {
        return new RoundsPlace(
                RoundsRank.of(entry.stop()),
                entry.room().map(WorklistFacts.Room::name).orElse(""),
                entry.animalId());
    }
}
