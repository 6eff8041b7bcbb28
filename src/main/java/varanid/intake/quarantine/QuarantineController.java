package varanid.intake.quarantine;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
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
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/quarantine")
@Tag(name = "Quarantine", description = "What is to be done with an animal until a person ends its quarantine")
class QuarantineController {

    private final FollowUps followUps;
    private final ReleaseReviews reviews;
    private final Rooms rooms;
    private final Animals animals;
    private final QuarantinePolicy policy;
    private final Clock clock;

    QuarantineController(
            FollowUps followUps,
            ReleaseReviews reviews,
            Rooms rooms,
            Animals animals,
            QuarantinePolicy policy,
            Clock clock) {
        this.followUps = followUps;
        this.reviews = reviews;
        this.rooms = rooms;
        this.animals = animals;
        this.policy = policy;
        this.clock = clock;
    }

    @GetMapping
    @Operation(
            summary = "The quarantine of an animal: where, how long and why, what to do next, and how to keep it apart",
            description = "Worked out from what is recorded. An animal in no room has no plan; the reply says what to"
                    + " do.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "the day to read it on, today unless said; later records are left out",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<QuarantineView> quarantine(Caller caller, @PathVariable UUID animalId, Query query) {
        LocalDate asOf = AsOf.read(query, Present.at(clock, caller.zone()));
        FollowUp followUp = followUps
                .find(caller.organisationId(), caller.zone(), animalId, asOf)
                .orElseThrow(() -> ProblemException.notFound("animal"));
        return ResponseEntity.ok(QuarantineView.of(
                policy,
                followUp,
                followUp.room().flatMap(place -> rooms.findById(caller.key(place.id()))),
                needed(caller, followUp),
                new Names(animals, caller.organisationId())));
    }

    private List<ReleaseCondition> needed(Caller caller, FollowUp followUp) {
        return followUp.where() == FollowUp.Where.IN_QUARANTINE
                ? animals.find(caller.organisationId(), followUp.animalId()).stream()
                        .flatMap(
                                animal -> reviews
                                        .review(caller.organisationId(), caller.zone(), animal, followUp.asOf())
                                        .open()
                                        .stream())
                        .toList()
                : List.of();
    }
}
