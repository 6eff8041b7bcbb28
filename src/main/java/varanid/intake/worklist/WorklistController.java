package varanid.intake.worklist;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.Query;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.RoundsItem;

@RestController
@RequestMapping("/api/v1/worklist")
@Tag(name = "Work list", description = "What to do now and in which order, over all animals")
class WorklistController {

    private final Worklist worklist;

    WorklistController(Worklist worklist) {
        this.worklist = worklist;
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
        return ResponseEntity.ok(worklist.morning(caller, query));
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
        return worklist.actNow(caller, query).reply();
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
        return worklist.rounds(caller, query).reply();
    }
}
