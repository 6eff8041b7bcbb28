package varanid.intake.enclosure;

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
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;

@RestController
@Tag(name = "Surroundings")
class SurroundingsController {

    private final EnclosureReadings readings;
    private final Animals animals;
    private final Clock clock;

    SurroundingsController(EnclosureReadings readings, Animals animals, Clock clock) {
        this.readings = readings;
        this.animals = animals;
        this.clock = clock;
    }

    @GetMapping("/api/v1/animals/{animalId}/surroundings")
    @Operation(
            summary = "What an animal's surroundings are, beside what is published and what keepers do",
            description = "The latest standing reading of each quantity, fact and size up to asOf, with its age, judged"
                    + " for the animal's species and life stage. It adds no points of illness: it is advice, and names"
                    + " the answers that it makes less certain. Useful before anything was measured: it then says what"
                    + " is known for this animal and what to measure first.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "the day to speak of; today in the organisation's zone where none is named",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<SurroundingsView> surroundings(Caller caller, @PathVariable UUID animalId, Query query) {
        Given<LocalDate> wanted = query.date("asOf");
        query.orThrow();
        Animals.Newcomer animal =
                animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        LocalDate asOf = wanted.orElse(Present.at(clock, caller.zone()).today());
        LatestReadings latest = readings.latest(caller.organisationId(), animalId, asOf);
        return ResponseEntity.ok(SurroundingsView.of(animal, asOf, latest, readings.rules()));
    }
}
