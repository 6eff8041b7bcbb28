package varanid.intake.worklist;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.SortedPage;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.RoundsItem;

@RestController
@RequestMapping("/api/v1/worklist")
@Tag(name = "Work list", description = "What to do now and in which order, over all animals")
class WorklistController {

    /** How far ahead a list can be asked for, in days. */
    private static final int FARTHEST = 366;

    /** How much of each list the morning page shows. */
    private static final int MORNING = 20;

    private final WorklistRows rows;
    private final WorklistFill fill;
    private final WorklistTexts texts;
    private final Clock clock;

    WorklistController(WorklistRows rows, WorklistFill fill, WorklistTexts texts, Clock clock) {
        this.rows = rows;
        this.fill = fill;
        this.texts = texts;
        this.clock = clock;
    }

    @GetMapping
    @Operation(
            summary = "The morning page: the beginning of both lists",
            description = "The lists contradict each other on purpose: whoever is needed at once is rarely whom to"
                    + " touch first. Each goes on at its own path.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "what is due on this day; today unless said, not earlier, at most 366 days ahead",
            schema = @Schema(type = "string", format = "date"))
    public ResponseEntity<Morning> both(Caller caller, Query query) {
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
        return ResponseEntity.ok(new Morning(
                asOf,
                Morning.Beginning.of("act-now", actNow, MORNING),
                Morning.Beginning.of("rounds", rounds, MORNING)));
    }

    @GetMapping("/act-now")
    @Operation(
            summary = "Whom to see to now: most urgent first, then what is due first",
            description = "Every animal that is urgent or was never looked at, is worse than at the look before, or has"
                    + " something due or overdue. The order is not the one to walk in: that is the rounds.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "what is due on this day; today unless said, not earlier, at most 366 days ahead",
            schema = @Schema(type = "string", format = "date"))
    @Parameter(
            name = "only",
            in = ParameterIn.QUERY,
            description = "due: with something due or overdue; overdue: with something overdue, longest first within an"
                    + " urgency; worse: than at the look before; urgent: a vet within days or sooner, or not looked at",
            schema =
                    @Schema(
                            type = "string",
                            allowableValues = {"due", "overdue", "worse", "urgent"}))
    @Parameter(
            name = "room",
            in = ParameterIn.QUERY,
            description = "only those in this room",
            schema = @Schema(type = "string", format = "uuid"))
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

    @GetMapping("/rounds")
    @Operation(
            summary = "The order to walk in, so that nothing is carried from the sick to the others",
            description =
                    "Residents, newcomers without signs, suspect, sick; in each those under strict isolation after"
                            + " the others, hatchlings before adults, then by room.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "what is due on this day; today unless said, not earlier, at most 366 days ahead",
            schema = @Schema(type = "string", format = "date"))
    @Parameter(
            name = "room",
            in = ParameterIn.QUERY,
            description = "only those in this room",
            schema = @Schema(type = "string", format = "uuid"))
    @Parameter(
            name = "due",
            in = ParameterIn.QUERY,
            description = "true: only those with something due or overdue",
            schema = @Schema(type = "boolean"))
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
        return page.reply(found, WorklistController::place, new WorklistViews(texts, asOf)::rounds);
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
}
