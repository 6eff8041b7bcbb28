package varanid.intake.weight;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;

@RestController
@Tag(name = "Weighings")
class WeightTrendController {

    private final WeightTrends trends;
    private final Clock clock;

    WeightTrendController(WeightTrends trends, Clock clock) {
        this.trends = trends;
        this.clock = clock;
    }

    @GetMapping("/api/v1/animals/{animalId}/weight-trend")
    @Operation(
            summary = "What the weighings of an animal say",
            description = "Goes by the weighings that stand, and by the weights and lengths of the registration. A"
                    + " threshold is past only where the whole interval of the scales is past it.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "a date, today or earlier; today in the organisation's zone if left out",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<WeightTrendView> trend(Caller caller, @PathVariable UUID animalId, Query query) {
        Present present = Present.at(clock, caller.zone());
        Given<LocalDate> asOf = query.date("asOf")
                .check(
                        date -> !present.isFuture(date),
                        "lies in the future",
                        "today in " + present.zone() + " or earlier");
        query.orThrow();
        return ResponseEntity.ok(
                trends.findView(caller.organisationId(), caller.zone(), animalId, asOf.orElse(present.today()))
                        .orElseThrow(() -> ProblemException.notFound("animal")));
    }
}
