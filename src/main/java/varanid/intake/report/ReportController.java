package varanid.intake.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/reports")
@Tag(name = "Reports", description = "What the people around an animal tell of it, for the vet")
class ReportController {

    private final Reports reports;
    private final ReportWords words;
    private final Once once;

    ReportController(Reports reports, ReportWords words, Once once) {
        this.reports = reports;
        this.words = words;
        this.once = once;
    }

    @PostMapping
    @Operation(
            summary = "Keep what somebody tells of an animal",
            description = "Needs the role keeper or clinician. Every part is optional, at least one is given. Words are"
                    + " kept as they are and shown to the vet; no amount is worked with. With supersedes it corrects an"
                    + " earlier report, which stays readable. Name people where a vet needs them, and not in free words:"
                    + " only the named fields can be removed later.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = ReportView.class)))
    public ResponseEntity<byte[]> keep(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = ReportBody.class))) JsonRequest request) {
        caller.requireKeeperOrClinician();
        reports.requireAnimal(caller, animalId);
        NewReport report = reports.read(caller, request);
        return once.perform(caller, request, () -> {
            ReportView kept = reports.keep(caller, animalId, report);
            return Reply.created("/api/v1/animals/" + animalId + "/reports/" + kept.id(), null, kept);
        });
    }

    @GetMapping
    @Operation(summary = "The reports of an animal, in the order they were recorded")
    public ResponseEntity<Items<ReportView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        return page.reply(reports.list(caller, animalId, page), ReportView::id, view -> view);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One report")
    public ResponseEntity<ReportView> report(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(
                reports.find(caller, animalId, id).orElseThrow(() -> ProblemException.notFound("report")));
    }

    @GetMapping("/standing")
    @Operation(
            summary = "What the reports of an animal come to",
            description = "The latest standing statement of each field, with when it was told and by whom; treatments"
                    + " and bites all. Beside it what nobody has told yet, with the question that asks for it, and the"
                    + " cautions that go with it.")
    @Transactional(readOnly = true)
    public ResponseEntity<StandingView> standing(Caller caller, @PathVariable UUID animalId, Query query) {
        query.orThrow();
        reports.requireAnimal(caller, animalId);
        Standing standing = reports.find(caller.organisationId(), animalId);
        return ResponseEntity.ok(new StandingView(
                standing,
                words.fields().stream()
                        .filter(each -> standing.isUntold(each.id()))
                        .map(each -> new Untold(each.id(), each.label(), each.ask(), each.lookAlikes()))
                        .toList(),
                words.cautions(standing)));
    }

    @PostMapping("/{id}/people-removal")
    @Operation(
            summary = "Remove who is in a report, for good",
            description =
                    "Needs the role administrator. Who told it, who was bitten, who lives there, who consents, who"
                            + " pays and whom to call are gone; what was told of the animal stays, and that and when they were"
                            + " removed.")
    @ApiResponse(
            responseCode = "200",
            description = "Removed, now or before",
            content = @Content(schema = @Schema(implementation = ReportView.class)))
    public ResponseEntity<byte[]> removePeople(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID id,
            @RequestBody(content = @Content(schema = @Schema(implementation = RemovalBody.class)))
                    JsonRequest request) {
        caller.require(Role.ADMINISTRATOR);
        request.read(fields -> () -> new RemovalBody());
        return once.perform(caller, request, () -> Reply.ok(reports.removePeople(caller, animalId, id)));
    }

    /** Nothing is said in it. */
    @Schema(name = "ReportPeopleRemoval", description = "an empty object")
    record RemovalBody() {}

    @Schema(name = "StandingReportsView")
    record StandingView(Standing standing, List<Untold> untold, List<ReportWords.Caution> cautions) {}

    /** @param lookAlikes what people mistake for it */
    @Schema(name = "UntoldField")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Untold(
            String field,
            String label,
            String ask,
            @Nullable String lookAlikes) {}

    /** Only described here: {@link NewReport} reads it. */
    @Schema(name = "NewReport", description = "Everything is optional; at least one thing is given")
    record ReportBody(
            @Schema(description = "who says so", maxLength = 200, example = "previous keeper, by phone") @Nullable
            String reportedBy,

            @Schema(description = "when it was told; now where none is named; not in the future") @Nullable
            Instant occurredAt,

            @Schema(description = "the report that this one corrects") @Nullable
            UUID supersedes,

            @Nullable MealBody lastMeal,
            @Nullable LastBody lastStool,
            @Nullable LastBody lastUrate,
            @Nullable LastBody lastDrink,

            @Schema(maxLength = 2000) @Nullable String diet,

            @Schema(maxLength = 2000) @Nullable String supplements,

            @Nullable List<LampBody> lamps,

            @Schema(
                    description = "cage-warm-end, cage-cool-end, cage-night, transport",
                    example = "{\"transport\": {\"value\": 64, \"unit\": \"[degF]\"}}")
            @Nullable
            Map<String, WarmthBody> temperatures,

            @Nullable JourneyBody transport,

            @Schema(description = "code: not-known, none-suspected, gravid-suspected, laid-recently") @Nullable
            CodedBody reproductiveState,

            @Nullable List<TreatmentBody> treatments,

            @Schema(description = "code: calm-so-far, defends-itself, bites, must-not-be-handled-alone") @Nullable
            CodedBody handlingRisk,

            @Nullable List<BiteBody> bites,

            @Schema(
                    description = "child-under-five, pregnant, older-than-65, weak-immune-system; or none, or unknown,"
                            + " alone")
            @Nullable
            List<String> vulnerablePeople,

            @Nullable ConsentBody consent,

            @Schema(maxLength = 500) @Nullable String spendingLimit,

            @Schema(maxLength = 200) @Nullable String payer,

            @Schema(description = "each as it was asked; takes the place of those told before") @Nullable
            List<String> questions,

            @Nullable ContactBody contact,

            @Schema(description = "about the report itself; not for the vet", maxLength = 2000) @Nullable
            String note) {

        @Schema(name = "NewReportedMeal", description = "One of on, daysAgo and unknown, or none of them")
        record MealBody(
                @Schema(maxLength = 500) @Nullable String food,
                @Nullable LocalDate on,
                @Nullable Integer daysAgo,
                @Nullable Boolean unknown,

                @Schema(maxLength = 2000) @Nullable String words) {}

        @Schema(name = "NewReportedLast", description = "One of on, daysAgo and unknown, or none of them")
        record LastBody(
                @Nullable LocalDate on,
                @Nullable Integer daysAgo,
                @Nullable Boolean unknown,

                @Schema(maxLength = 2000) @Nullable String words) {}

        @Schema(name = "NewReportedLamp")
        record LampBody(
                @Schema(maxLength = 200) @Nullable String place,

                @Schema(
                        description = "flood, mercury-vapour, metal-halide, uv-tube, compact-uv, heat-emitter,"
                                + " heat-mat, led, other, unknown")
                @Nullable
                String type,

                @Nullable Integer ageMonths,

                @Schema(maxLength = 500) @Nullable String words) {}

        @Schema(name = "NewReportedTemperature")
        record WarmthBody(
                BigDecimal value,
                @Schema(allowableValues = {"Cel", "[degF]"}) String unit,

                @Schema(description = "stands by an unlikely value") @Nullable
                Boolean confirmed) {}

        @Schema(name = "NewReportedJourney")
        record JourneyBody(
                @Nullable BigDecimal hours,
                @Schema(maxLength = 2000) @Nullable String words) {}

        @Schema(name = "NewReportedCode")
        record CodedBody(
                String code,
                @Schema(maxLength = 2000) @Nullable String words) {}

        @Schema(name = "NewReportedTreatment")
        record TreatmentBody(
                @Schema(description = "as told, such as the words on the label", maxLength = 500)
                String what,

                @Schema(maxLength = 200) @Nullable String givenBy,
                @Nullable LocalDate on,

                @Schema(description = "where it was more than one day", maxLength = 200) @Nullable
                String period,

                @Schema(maxLength = 2000) @Nullable String why,

                @Schema(description = "as told; never worked with", maxLength = 500) @Nullable
                String amount) {}

        @Schema(name = "NewReportedBite")
        record BiteBody(
                @Schema(description = "a description is enough", maxLength = 200) @Nullable
                String who,

                @Nullable LocalDate on,

                @Schema(maxLength = 200) @Nullable String bodyPart,

                @Schema(
                        description = "unknown if left out",
                        allowableValues = {"yes", "no", "unknown"})
                @Nullable
                String brokeSkin,

                @Schema(
                        description = "unknown if left out",
                        allowableValues = {"yes", "no", "unknown"})
                @Nullable
                String doctorSeen) {}

        @Schema(name = "NewReportedConsent")
        record ConsentBody(
                @Schema(description = "who may consent", maxLength = 200) @Nullable
                String by,

                @Schema(description = "examination, emergency-care-until-reached, necropsy; or none-yet alone")
                @Nullable
                List<String> given,

                @Schema(maxLength = 2000) @Nullable String words) {}

        @Schema(name = "NewReportedContact")
        record ContactBody(
                @Schema(maxLength = 200) @Nullable String name,

                @Schema(maxLength = 60) @Nullable String phone,

                @Schema(maxLength = 254) @Nullable String email,

                @Schema(maxLength = 200) @Nullable String bestTime) {}
    }
}
