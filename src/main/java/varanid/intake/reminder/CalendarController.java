package varanid.intake.reminder;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.SecretText;

@RestController
@RequestMapping("/api/v1/calendars")
@Tag(
        name = "Calendars",
        description = "Addresses at which a calendar program fetches reminders. A person sees their own, an"
                + " administrator all")
class CalendarController {

    private final OwnCalendars calendars;

    CalendarController(OwnCalendars calendars) {
        this.calendars = calendars;
    }

    @PostMapping
    @Operation(
            summary = "Make a calendar for oneself",
            description = "The address is in this reply and never shown again. Whoever knows it can read the calendar,"
                    + " until it is revoked.")
    @ApiResponse(
            responseCode = "201",
            description = "Made",
            content = @Content(schema = @Schema(implementation = MadeCalendar.class)))
    public ResponseEntity<byte[]> make(
            Caller caller,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewCalendar.class)))
                    JsonRequest request) {
        return calendars.make(caller, request);
    }

    @GetMapping
    @Operation(summary = "Calendars, without their addresses")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<CalendarView>> list(Caller caller, Query query) {
        Page page = query.page();
        List<CalendarLinkRow> rows = calendars.list(caller, page.after(), page.fetch());
        return page.reply(rows, CalendarLinkRow::id, CalendarView::of);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One calendar, without its address")
    @Transactional(readOnly = true)
    public ResponseEntity<CalendarView> calendar(Caller caller, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(CalendarView.of(calendars.get(caller, id)));
    }

    @PostMapping("/{id}/revocation")
    @Operation(
            summary = "Revoke a calendar",
            description = "At once and for good: its address opens nothing any more. The body may be left out.")
    @ApiResponse(
            responseCode = "200",
            description = "Revoked",
            content = @Content(schema = @Schema(implementation = CalendarView.class)))
    public ResponseEntity<byte[]> revoke(
            Caller caller,
            @PathVariable UUID id,
            @RequestBody(required = false, content = @Content(schema = @Schema(implementation = Nothing.class)))
                    JsonRequest request) {
        request.read(fields -> Nothing::new);
        return calendars.revoke(caller, id, request);
    }

    @Schema(name = "NewCalendar")
    record NewCalendar(
            @Schema(description = "of this animal alone; of all animals if left out") @Nullable
            UUID animalId,

            @Schema(
                    type = "string",
                    description = "all-day events, which every calendar program shows, or to-dos, which some do not;"
                            + " events if left out",
                    allowableValues = {"events", "todos"})
            CalendarFeed.As form,

            @Schema(
                    description = "what it is for; the calendar program shows it as the calendar's name",
                    maxLength = 100,
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String label) {

        static Supplier<NewCalendar> reader(JsonFields fields, Caller caller, Animals animals) {
            Given<UUID> animal = fields.id("animalId")
                    .check(
                            id -> animals.find(caller.organisationId(), id).isPresent(),
                            "is not an animal of the organisation",
                            "the id of one, or leave it out for all");
            Given<CalendarFeed.As> form =
                    fields.field("form").choice(List.of(CalendarFeed.As.values()), CalendarFeed.As::code);
            Given<String> label = fields.text("label", 100).required();
            return () -> new NewCalendar(animal.orNull(), form.orElse(CalendarFeed.As.EVENTS), label.get());
        }
    }

    @Schema(name = "Nothing", description = "An empty object")
    record Nothing() {}

    @Schema(name = "Calendar")
    record CalendarView(
            UUID id,
            UUID personId,

            @Schema(description = "none: of all animals") @Nullable
            UUID animalId,

            @Schema(allowableValues = {"events", "todos"}) String form,

            String label,

            @Schema(description = "enough of its address to know it again")
            String hint,

            @Schema(description = "the day, in the organisation's zone; none: never") @Nullable
            LocalDate lastFetchedOn,

            @Nullable Instant revokedAt,
            Instant recordedAt) {

        static CalendarView of(CalendarLinkRow row) {
            return new CalendarView(
                    row.id(),
                    row.personId(),
                    row.animalId().orElse(null),
                    row.form().code(),
                    row.label(),
                    row.hint(),
                    row.lastFetchedOn(),
                    row.revokedAt(),
                    row.recordedAt());
        }
    }

    @Schema(name = "MadeCalendar")
    record MadeCalendar(
            UUID id,
            UUID personId,

            @Schema(description = "none: of all animals") @Nullable
            UUID animalId,

            @Schema(allowableValues = {"events", "todos"}) String form,

            String label,

            @Schema(
                    format = "uri-reference",
                    description = "where a calendar program fetches it, on this service; a secret, shown here and never"
                            + " again")
            String address,

            Instant recordedAt) {

        static MadeCalendar of(CalendarLinkRow row, SecretText secret) {
            return new MadeCalendar(
                    row.id(),
                    row.personId(),
                    row.animalId().orElse(null),
                    row.form().code(),
                    row.label(),
                    FeedController.PATH + secret.text() + ".ics",
                    row.recordedAt());
        }
    }
}
