package varanid.intake.sample;

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
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/freedom")
@Tag(name = "Samples")
class FreedomController {

    private final SampleStore store;
    private final SamplingSettings settings;
    private final Animals animals;
    private final SamplingReference reference;
    private final Clock clock;

    FreedomController(
            SampleStore store, SamplingSettings settings, Animals animals, SamplingReference reference, Clock clock) {
        this.store = store;
        this.settings = settings;
        this.animals = animals;
        this.reference = reference;
        this.clock = clock;
    }

    @GetMapping
    @Operation(
            summary = "How probable freedom from each infection is after the animal's negative samples",
            description = "Needs the role clinician. Arithmetic on assumptions that are all named; it lifts no"
                    + " quarantine.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "up to which day; today unless said",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<FreedomView> freedom(Caller caller, @PathVariable UUID animalId, Query query) {
        if (!caller.may(Role.CLINICIAN)) {
            throw ProblemException.forbidden(
                    reference.defaults().texts().keeperInstead() + " /api/v1/animals/" + animalId + "/quarantine");
        }
        Given<LocalDate> asOf = query.date("asOf");
        query.orThrow();
        Animals.Newcomer animal =
                animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        return ResponseEntity.ok(new FreedomReader(
                        animal,
                        settings.get(caller.organisationId()),
                        asOf.orElse(Present.at(clock, caller.zone()).today()),
                        store.listStanding(caller.organisationId(), animalId))
                .read());
    }
}
