package varanid.intake.worklist;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
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
import varanid.intake.worklist.WorklistViews.RoomView;
import varanid.intake.worklist.WorklistViews.RoundsItem;

/** The two lists as a person asks for them, over the API or on a page: the same order, filters and pages for both. */
@Service
public class Worklist {

    /** How many rooms a list can be narrowed to by choosing from a list of rooms. */
    public static final int MOST_ROOMS = 200;

    /** How far ahead a list can be asked for, in days. */
    private static final int FARTHEST = 366;

    /** How much of each list the morning page shows. */
    private static final int MORNING = 20;

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
     * Whom to see to now, a page of it.
     *
     * @param query may have {@code asOf}, {@code only}, {@code room}, {@code limit} and {@code cursor}; what else it may
     *     have was asked for before
     * @throws ProblemException 422 with every fault of the query; 503 while entries are being made
     */
    public Listed<ActNowItem> actNow(Caller caller, Query query) {
        Given<LocalDate> day = day(caller, query);
        Given<Only> only = query.choice("only", Only.CHOICES, Only::code);
        Given<UUID> room = query.id("room");
        Only chosen = only.orElse(Only.ALL);
        SortedPage<ActPlace> page = query.page(ActPlace.form(chosen.day()));
        LocalDate asOf = day.orElse(today(caller));
        fill.require(caller.organisationId());
        List<Entry> found =
                rows.listActNow(caller.organisationId(), chosen, room.find(), asOf, page.after(), page.fetch());
        return listed(asOf, page, found, entry -> place(entry, chosen), new WorklistViews(texts, asOf)::actNow);
    }

    /**
     * The order to walk in, a page of it.
     *
     * @param query may have {@code asOf}, {@code due}, {@code room}, {@code limit} and {@code cursor}; what else it may
     *     have was asked for before
     * @throws ProblemException 422 with every fault of the query; 503 while entries are being made
     */
    public Listed<RoundsItem> rounds(Caller caller, Query query) {
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
        return listed(asOf, page, found, Worklist::place, new WorklistViews(texts, asOf)::rounds);
    }

    /** The beginning of both lists. */
    Morning morning(Caller caller, Query query) {
        Given<LocalDate> day = day(caller, query);
        query.orThrow();
        LocalDate asOf = day.orElse(today(caller));
        UUID organisation = caller.organisationId();
        fill.require(organisation);
        WorklistViews views = new WorklistViews(texts, asOf);
        int oneMore = MORNING + 1;
        Optional<UUID> anyRoom = Optional.empty();
        List<ActNowItem> actNow =
                rows.listActNow(organisation, Only.ALL, anyRoom, asOf, Optional.empty(), oneMore).stream()
                        .map(views::actNow)
                        .toList();
        List<RoundsItem> rounds =
                rows.listRounds(organisation, anyRoom, Optional.empty(), Optional.empty(), oneMore).stream()
                        .map(views::rounds)
                        .toList();
        return new Morning(
                asOf,
                Morning.Beginning.of("act-now", actNow, MORNING),
                Morning.Beginning.of("rounds", rounds, MORNING));
    }

    /** Whether no animal of the organisation is in care. */
    public boolean isEmpty(UUID organisationId) {
        return rows.listRounds(organisationId, Optional.empty(), Optional.empty(), Optional.empty(), 1)
                .isEmpty();
    }

    /** The rooms that animals in care stand in, by name; at most {@value #MOST_ROOMS}. */
    public List<RoomView> listRooms(UUID organisationId) {
        return rows.listRooms(organisationId, MOST_ROOMS).stream()
                .map(room -> new RoomView(room.id(), room.name()))
                .sorted(Comparator.comparing(RoomView::name, String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(RoomView::name))
                .toList();
    }

    private static <K, T> Listed<T> listed(
            LocalDate asOf, SortedPage<K> page, List<Entry> found, Function<Entry, K> key, Function<Entry, T> view) {
        return new Listed<>(
                asOf,
                page.shown(found).stream().map(view).toList(),
                page.findNext(found, key),
                page.reply(found, key, view));
    }

    private Given<LocalDate> day(Caller caller, Query query) {
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

    private LocalDate today(Caller caller) {
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

    /**
     * A page of a list.
     *
     * @param asOf the day that due, overdue and late are meant on
     * @param items in the order of the list
     * @param next the cursor of the page that follows, where one does
     * @param reply the same for the API
     */
    public record Listed<T>(LocalDate asOf, List<T> items, Optional<String> next, ResponseEntity<Items<T>> reply) {}
}
