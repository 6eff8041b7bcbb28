package varanid.intake.quarantine;

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
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.util.RawValue;
import varanid.intake.account.PeopleNames;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.CanonicalJson;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Faults;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.JsonValue;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/animals/{animalId}")
@Tag(
        name = "Release",
        description =
                "Ending a quarantine is a decision of a named person. The software ends none, and never says that an"
                        + " animal is well")
class ReleaseController {

    private final ReleaseReviews reviews;
    private final ReleaseApprovals approvals;
    private final ReleaseDecisions decisions;
    private final Moves moves;
    private final Rooms rooms;
    private final Animals animals;
    private final PeopleNames people;
    private final EventWriter writer;
    private final QuarantinePolicy policy;
    private final OrganisationLock lock;
    private final Ids ids;
    private final Once once;
    private final Clock clock;

    ReleaseController(
            ReleaseReviews reviews,
            ReleaseApprovals approvals,
            ReleaseDecisions decisions,
            Moves moves,
            Rooms rooms,
            Animals animals,
            PeopleNames people,
            EventWriter writer,
            QuarantinePolicy policy,
            OrganisationLock lock,
            Ids ids,
            Once once,
            Clock clock) {
        this.reviews = reviews;
        this.approvals = approvals;
        this.decisions = decisions;
        this.moves = moves;
        this.rooms = rooms;
        this.animals = animals;
        this.people = people;
        this.writer = writer;
        this.policy = policy;
        this.lock = lock;
        this.ids = ids;
        this.once = once;
        this.clock = clock;
    }

    @GetMapping("/release-review")
    @Operation(
            summary = "What speaks for and against ending the quarantine of an animal",
            description =
                    "Every condition as met, unmet or unknown, with its evidence and what is missing or to be found"
                            + " out. It decides nothing.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "the day to read it on, today unless said; later records are left out",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<ReviewView> review(Caller caller, @PathVariable UUID animalId, Query query) {
        LocalDate asOf = AsOf.read(query, Present.at(clock, caller.zone()));
        return ResponseEntity.ok(readReview(caller, animalId, asOf));
    }

    ReviewView readReview(Caller caller, UUID animalId, LocalDate asOf) {
        Animals.Newcomer animal = get(caller, animalId);
        return ReviewView.of(policy, animalId, reviews.review(caller.organisationId(), caller.zone(), animal, asOf));
    }

    @PostMapping("/release-approvals")
    @Operation(
            summary = "Say as a vet that the quarantine of an animal may end, or that it may not",
            description = "Needs the role clinician. The last one counts; one from before a restart of the clock does"
                    + " not.")
    @ApiResponse(
            responseCode = "201",
            description = "Recorded",
            content = @Content(schema = @Schema(implementation = ApprovalView.class)))
    public ResponseEntity<byte[]> approve(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = ApprovalRequest.class)))
                    JsonRequest request) {
        caller.require(Role.CLINICIAN);
        Present present = Present.at(clock, caller.zone());
        get(caller, animalId);
        ApprovalRequest wanted = request.read(fields -> ApprovalRequest.reader(fields, present));
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            ReleaseApprovalRow row = approvals.saveAndFlush(new ReleaseApprovalRow(
                    caller.key(ids.next()),
                    animalId,
                    wanted.on(),
                    wanted.approves(),
                    wanted.note(),
                    caller.personId(),
                    present.now()));
            writer.announce(caller.organisationId(), Set.of(animalId));
            return Reply.created(path(animalId, "release-approvals", row.id()), null, ApprovalView.of(row));
        });
    }

    @GetMapping("/release-approvals")
    @Operation(summary = "What vets said about ending the quarantine of an animal, in the order it was recorded")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<ApprovalView>> listApprovals(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        get(caller, animalId);
        return page.reply(
                approvals.list(caller.organisationId(), animalId, page.after(), page.fetch()),
                ReleaseApprovalRow::id,
                ApprovalView::of);
    }

    @GetMapping("/release-approvals/{approvalId}")
    @Operation(summary = "One thing that a vet said about ending the quarantine of an animal")
    @Transactional(readOnly = true)
    public ResponseEntity<ApprovalView> approval(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID approvalId, Query query) {
        query.orThrow();
        return ResponseEntity.ok(approvals
                .find(caller.organisationId(), animalId, approvalId)
                .map(ApprovalView::of)
                .orElseThrow(() -> ProblemException.notFound("approval")));
    }

    @PostMapping("/release-decisions")
    @Operation(
            summary = "End the quarantine of an animal",
            description =
                    "A decision of the person who sends it, keeper or clinician, as of today. Every condition that"
                            + " is not met needs a reason, which stays on record with the whole review. The animal leaves its"
                            + " room, for one of residents where that is named.")
    @ApiResponse(
            responseCode = "201",
            description = "Ended",
            content = @Content(schema = @Schema(implementation = DecisionView.class)))
    public ResponseEntity<byte[]> decide(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = DecisionRequest.class)))
                    JsonRequest request) {
        caller.requireKeeperOrClinician();
        Present present = Present.at(clock, caller.zone());
        get(caller, animalId);
        DecisionRequest wanted = request.read(DecisionRequest::reader);
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            ReleaseDecisionRow row = decide(caller, get(caller, animalId), wanted, present);
            Map<String, String> headers = Map.of(
                    "Location",
                    path(animalId, "release-decisions", row.id()),
                    "ETag",
                    row.document().eTag());
            return new Reply(201, headers, new RawValue(row.document().text()));
        });
    }

    @GetMapping("/release-decisions")
    @Operation(summary = "Decisions that ended quarantines of an animal, in the order they were made")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<DecisionItem>> listDecisions(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        get(caller, animalId);
        return page.reply(
                decisions.list(caller.organisationId(), animalId, page.after(), page.fetch()),
                ReleaseDecisionRow::id,
                DecisionItem::of);
    }

    @GetMapping("/release-decisions/{decisionId}")
    @Operation(
            summary = "One decision, byte for byte as it was made, with all that was known",
            description = "The ETag is the SHA-256 of the bytes.")
    @ApiResponse(
            responseCode = "200",
            description = "As it was then",
            content = @Content(schema = @Schema(implementation = DecisionView.class)))
    @Transactional(readOnly = true)
    public ResponseEntity<byte[]> decision(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID decisionId, Query query) {
        query.orThrow();
        CanonicalJson document = decisions
                .find(caller.organisationId(), animalId, decisionId)
                .orElseThrow(() -> ProblemException.notFound("decision"))
                .document();
        return ResponseEntity.ok()
                .eTag(document.eTag())
                .contentType(MediaType.APPLICATION_JSON)
                .body(document.bytes());
    }

    private ReleaseDecisionRow decide(Caller caller, Animals.Newcomer animal, DecisionRequest wanted, Present present) {
        LocalDate today = present.today();
        UUID organisation = caller.organisationId();
        Faults faults = new Faults();
        Optional<RoomRow> from = reviews.findRoom(organisation, animal.id(), today);
        if (from.isEmpty()) {
            faults.add(Fault.at("#", "it stands in no room for quarantine", "an animal in quarantine"));
        }
        Optional<RoomRow> to = Optional.ofNullable(wanted.roomId()).flatMap(room -> rooms.findById(caller.key(room)));
        if (wanted.roomId() != null && to.filter(RoomRow::isOfResidents).isEmpty()) {
            faults.add(Fault.at("#/roomId", "is no room of residents here", "the id of one, or leave it out"));
        }
        ReleaseReview review = reviews.review(organisation, caller.zone(), animal, today);
        if (from.isPresent()) {
            checkOverrides(faults, review, wanted.overrides());
        }
        faults.orThrow();
        ReleaseDecision decision = new ReleaseDecision(caller.personId(), today, review, wanted.overrides());
        EventWriter.By by = new EventWriter.By(organisation, caller.personId(), present.now());
        String reason = Optional.ofNullable(wanted.note()).orElse("its quarantine was ended by a decision");
        Moves.Moved moved = to.map(room -> moves.placeAmongResidents(by, animal, room, today, reason))
                .orElseGet(() -> moves.release(by, animal, today, reason));
        UUID id = ids.next();
        DecisionView view = new DecisionView(
                id,
                animal.id(),
                caller.personId(),
                people.find(organisation, caller.personId()).orElseThrow(),
                today,
                present.now(),
                attention(review, decision),
                byCode(decision.overrides()),
                wanted.note(),
                from.orElseThrow().id(),
                wanted.roomId(),
                moved.arrival()
                        .map(arrival -> ClockView.inWords(
                                policy, arrival.room(), arrival.effect().after()))
                        .orElse(null),
                moved.placement().id(),
                ReviewView.of(policy, animal.id(), review));
        return decisions.saveAndFlush(new ReleaseDecisionRow(
                caller.key(id),
                animal.id(),
                moved.placement().id(),
                today,
                CanonicalJson.of(view),
                caller.personId(),
                present.now()));
    }

    private static void checkOverrides(
            Faults faults, ReleaseReview review, Map<ReleaseCondition.Id, String> overrides) {
        List<ReleaseCondition.Id> open =
                review.open().stream().map(ReleaseCondition::id).toList();
        for (ReleaseCondition.Id id : ReleaseCondition.Id.values()) {
            String pointer = "#/overrides/" + id.code();
            if (open.contains(id) && !overrides.containsKey(id)) {
                faults.add(Fault.at(
                        pointer,
                        "this condition is not met",
                        "why the quarantine is ended all the same; or meet the condition first"));
            } else if (!open.contains(id) && overrides.containsKey(id)) {
                faults.add(Fault.at(
                        pointer,
                        "this condition is met, or not asked for",
                        "leave it out: there is nothing to override"));
            }
        }
    }

    /** What must not be overlooked, the loudest first. */
    private List<String> attention(ReleaseReview review, ReleaseDecision decision) {
        List<String> attention = new ArrayList<>();
        if (decision.overrides().containsKey(ReleaseCondition.Id.VET_APPROVAL)) {
            boolean objects = review.open().stream()
                    .filter(condition -> condition.id() == ReleaseCondition.Id.VET_APPROVAL)
                    .flatMap(condition -> condition.evidence().stream())
                    .anyMatch(text -> text.startsWith(ReleaseReview.OBJECTS));
            if (objects) {
                attention.add(policy.says().vetObjects());
            }
            attention.add(policy.says().approvalOverridden());
        }
        if (decision.overrides().containsKey(ReleaseCondition.Id.NO_LEGAL_HOLD)) {
            attention.add(policy.says().heldByAuthority());
        }
        if (!decision.overrides().isEmpty()) {
            attention.add(policy.says().conditionsOverridden());
        }
        return attention;
    }

    private static Map<String, String> byCode(Map<ReleaseCondition.Id, String> overrides) {
        Map<String, String> byCode = new TreeMap<>();
        overrides.forEach((id, reason) -> byCode.put(id.code(), reason));
        return byCode;
    }

    private Animals.Newcomer get(Caller caller, UUID animalId) {
        return animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
    }

    private static String path(UUID animalId, String collection, UUID id) {
        return "/api/v1/animals/" + animalId + "/" + collection + "/" + id;
    }

    @Schema(name = "ReleaseApprovalRequest")
    record ApprovalRequest(
            @Schema(
                    description = "true: it may end; false: the vet objects",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            boolean approves,

            @Schema(description = "today unless said; not in the future")
            LocalDate on,

            @Schema(maxLength = 4000) @Nullable String note) {

        static Supplier<ApprovalRequest> reader(JsonFields fields, Present present) {
            Given<Boolean> approves = fields.flag("approves").required();
            Given<LocalDate> on = fields.pastDate("on", present);
            Given<String> note = fields.prose("note", 4_000);
            return () -> new ApprovalRequest(approves.get(), on.orElse(present.today()), note.orNull());
        }
    }

    @Schema(name = "ReleaseApproval")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ApprovalView(
            UUID id,
            UUID animalId,

            @Schema(description = "left out where a later answer of the vet takes back what was said before") @Nullable
            Boolean approves,

            LocalDate on,
            @Nullable String note,

            @Schema(description = "the vet's answer that it follows from") @Nullable
            UUID answerId,

            @Schema(description = "who answered, as that answer says") @Nullable
            String answeredBy,

            @Schema(description = "nobody where it follows from an answer that no account wrote") @Nullable
            UUID recordedBy,

            Instant recordedAt) {

        static ApprovalView of(ReleaseApprovalRow row) {
            return new ApprovalView(
                    row.id(),
                    row.animalId,
                    row.approves,
                    row.onDay,
                    row.note,
                    row.answerId,
                    row.answeredBy,
                    row.recordedBy,
                    row.recordedAt);
        }
    }

    @Schema(name = "ReleaseDecisionRequest")
    record DecisionRequest(
            @Schema(description = "for each condition that is not met, why the quarantine is ended all the same")
            Map<ReleaseCondition.Id, String> overrides,

            @Schema(description = "a room of residents to move it to") @Nullable
            UUID roomId,

            @Schema(maxLength = 4000) @Nullable String note) {

        static Supplier<DecisionRequest> reader(JsonFields fields) {
            Given<Map<String, String>> overrides =
                    fields.entries("overrides", ReleaseCondition.Id.values().length, DecisionRequest::reason);
            Given<UUID> room = fields.id("roomId");
            Given<String> note = fields.prose("note", 4_000);
            return () -> {
                Map<ReleaseCondition.Id, String> reasons = new EnumMap<>(ReleaseCondition.Id.class);
                overrides
                        .orElse(Map.of())
                        .forEach((code, reason) -> find(code).ifPresent(id -> reasons.put(id, reason)));
                return new DecisionRequest(reasons, room.orNull(), note.orNull());
            };
        }

        private static Given<String> reason(String code, JsonValue value) {
            if (find(code).isPresent()) {
                return value.prose(2_000);
            }
            return value.faulty(
                    "is no condition",
                    "one of: "
                            + String.join(
                                    ", ",
                                    Arrays.stream(ReleaseCondition.Id.values())
                                            .map(ReleaseCondition.Id::code)
                                            .toList()));
        }

        private static Optional<ReleaseCondition.Id> find(String code) {
            return Arrays.stream(ReleaseCondition.Id.values())
                    .filter(id -> id.code().equals(code))
                    .findFirst();
        }
    }

    /** Kept as canonical text: members stay in this order. */
    @Schema(name = "ReleaseDecision")
    record DecisionView(
            UUID id,
            UUID animalId,
            UUID decidedBy,

            @Schema(description = "that person's name on that day")
            String decidedByName,

            LocalDate on,
            Instant recordedAt,

            @Schema(description = "what must not be overlooked, the loudest first")
            List<String> attention,

            @Schema(description = "the reasons given for what was not met")
            Map<String, String> overrides,

            @Nullable String note,
            UUID fromRoomId,
            @Nullable UUID toRoomId,

            @Schema(description = "what the clock of that room then says") @Nullable
            String toRoomClock,

            UUID placementId,

            @Schema(description = "all that was known") ReviewView review) {}

    @Schema(name = "ReleaseDecisionItem")
    record DecisionItem(UUID id, LocalDate on, UUID decidedBy, UUID placementId, Instant recordedAt) {
        static DecisionItem of(ReleaseDecisionRow row) {
            return new DecisionItem(row.id(), row.onDay, row.recordedBy, row.placementId, row.recordedAt);
        }
    }
}
