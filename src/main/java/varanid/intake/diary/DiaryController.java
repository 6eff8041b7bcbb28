package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/diary")
@Tag(name = "Diary", description = "What was noticed about an animal from day to day, in seconds")
class DiaryController {

    private static final LocalDate FIRST_DAY = LocalDate.of(1900, 1, 1);
    private static final LocalDate LAST_DAY = LocalDate.of(2199, 12, 31);

    private final DiaryRows rows;
    private final DiaryKeeper keeper;
    private final Animals animals;
    private final Once once;
    private final Clock clock;

    DiaryController(DiaryRows rows, DiaryKeeper keeper, Animals animals, Once once, Clock clock) {
        this.rows = rows;
        this.keeper = keeper;
        this.animals = animals;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Write down what was noticed or done",
            description =
                    "Everything is optional, and at least one thing is there. What is left out stays unknown."
                            + " lookNow names what asks for a look at the animal now; it adds no points. Needs the role keeper.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = DiaryEntryView.class)))
    public ResponseEntity<byte[]> keep(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = DiaryEntryBody.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        mustBeOurs(caller, animalId);
        Present present = Present.at(clock, caller.zone());
        NewDiaryEntry wanted = request.read(fields -> NewDiaryEntry.read(fields, present));
        return once.perform(caller, request, () -> {
            DiaryRow row = keeper.keep(caller, animalId, wanted);
            DiaryEntry entry = row.entry();
            return Reply.created(
                    path(animalId, row.id()),
                    null,
                    DiaryEntryView.of(row, null, keeper.lookNow(caller.organisationId(), entry)));
        });
    }

    @GetMapping
    @Operation(
            summary = "The diary of an animal, in the order it was recorded",
            description = "Superseded entries too: supersededBy names what took their place.")
    @Parameter(
            name = "from",
            in = ParameterIn.QUERY,
            description = "the first day, in the organisation's zone",
            schema = @Schema(type = "string", format = "date"))
    @Parameter(
            name = "to",
            in = ParameterIn.QUERY,
            description = "the last day",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<Items<DiaryEntryView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Given<LocalDate> from = query.date("from");
        Given<LocalDate> to = query.date("to");
        if (from.isGiven() && to.isGiven()) {
            to.check(last -> !last.isBefore(from.get()), "is before from", "from or later");
        }
        Page page = query.page();
        mustBeOurs(caller, animalId);
        List<DiaryRow> fetched = rows.list(
                caller.organisationId(),
                animalId,
                from.orElse(FIRST_DAY),
                to.orElse(LAST_DAY),
                page.after(),
                page.fetch());
        Map<UUID, UUID> successors = successors(caller, fetched);
        return page.reply(fetched, DiaryRow::id, row -> DiaryEntryView.of(row, successors.get(row.id()), null));
    }

    @GetMapping("/{id}")
    @Operation(summary = "One entry of the diary")
    @Transactional(readOnly = true)
    public ResponseEntity<DiaryEntryView> entry(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        DiaryRow row =
                rows.find(caller.organisationId(), animalId, id).orElseThrow(() -> ProblemException.notFound("entry"));
        return ResponseEntity.ok(
                DiaryEntryView.of(row, successors(caller, List.of(row)).get(id), null));
    }

    private Map<UUID, UUID> successors(Caller caller, List<DiaryRow> of) {
        return of.isEmpty()
                ? Map.of()
                : rows
                        .listSuccessors(
                                caller.organisationId(),
                                of.stream().map(DiaryRow::id).toList())
                        .stream()
                        .collect(Collectors.toMap(
                                successor -> Objects.requireNonNull(successor.supersedes()), DiaryRow::id));
    }

    private void mustBeOurs(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }

    static String path(UUID animalId, UUID id) {
        return "/api/v1/animals/" + animalId + "/diary/" + id;
    }

    /** Only described here: {@link NewDiaryEntry} reads it. */
    @Schema(name = "NewDiaryEntry")
    record DiaryEntryBody(
            @Schema(description = "none: offered and refused") @Nullable
            Ate ate,

            @Schema(description = "what was offered; only beside ate", maxLength = 200) @Nullable
            String food,

            @Nullable Noticed drank,
            @Nullable Passed passed,
            @Nullable Seen seen,

            @Schema(description = "how it bears people, from calm to frantic; dull is not calm") @Nullable
            Demeanour demeanour,

            @Schema(allowableValues = {"spot-clean", "full-clean"}) @Nullable
            String cleaning,

            @Schema(allowableValues = {"none-seen", "seen"}) @Nullable
            String miteCheck,

            @Schema(maxLength = 2000) @Nullable String note,

            @Schema(description = "now where none is named") @Nullable
            Instant occurredAt,

            @Schema(description = "the entry that this one corrects") @Nullable
            UUID supersedes) {}

    @Schema(name = "Passed", description = "what came out of it")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Passed(@Nullable Noticed stool, @Nullable Noticed urate) {}

    @Schema(name = "DiaryEntry")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record DiaryEntryView(
            UUID id,
            UUID animalId,
            UUID recordedBy,
            Instant occurredAt,
            Instant recordedAt,

            @Schema(description = "in the organisation's zone")
            LocalDate localDate,

            @Nullable Ate ate,
            @Nullable String food,
            @Nullable Noticed drank,
            @Nullable Passed passed,
            @Nullable Seen seen,
            @Nullable Demeanour demeanour,
            @Nullable Cleaning cleaning,
            @Nullable MiteCheck miteCheck,
            @Nullable String note,
            @Nullable UUID supersedes,
            @Nullable UUID supersededBy,

            @Schema(description = "why to look the animal over now; only in the reply to writing it down") @Nullable
            List<LookNow> lookNow,

            String path) {

        static DiaryEntryView of(DiaryRow row, @Nullable UUID supersededBy, @Nullable List<LookNow> lookNow) {
            DiaryEntry entry = row.entry();
            boolean passed = entry.stool().isPresent() || entry.urate().isPresent();
            return new DiaryEntryView(
                    entry.id(),
                    entry.animalId(),
                    entry.recordedBy(),
                    entry.occurredAt(),
                    entry.recordedAt(),
                    entry.localDate(),
                    entry.ate().orElse(null),
                    entry.food().orElse(null),
                    entry.drank().orElse(null),
                    passed
                            ? new Passed(
                                    entry.stool().orElse(null), entry.urate().orElse(null))
                            : null,
                    entry.seen().orElse(null),
                    entry.demeanour().orElse(null),
                    entry.cleaning() == Cleaning.NONE ? null : entry.cleaning(),
                    entry.miteCheck() == MiteCheck.NOT_LOOKED ? null : entry.miteCheck(),
                    entry.note().orElse(null),
                    row.supersedes(),
                    supersededBy,
                    lookNow,
                    DiaryController.path(entry.animalId(), entry.id()));
        }
    }
}
