package varanid.intake.animal;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Version;

@RestController
@RequestMapping("/api/v1/animals")
@Tag(name = "Animals", description = "Animals that were taken in. Nothing is refused for want of a detail")
class AnimalController {

    private final AnimalStore store;
    private final Animals animals;
    private final Consignments consignments;
    private final ReferenceData reference;
    private final Once once;
    private final Clock clock;

    AnimalController(
            AnimalStore store,
            Animals animals,
            Consignments consignments,
            ReferenceData reference,
            Once once,
            Clock clock) {
        this.store = store;
        this.animals = animals;
        this.consignments = consignments;
        this.reference = reference;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(summary = "Register a newcomer", description = "Needs the role keeper. Every field may be left out.")
    @ApiResponse(
            responseCode = "201",
            description = "Registered",
            content = @Content(schema = @Schema(implementation = AnimalView.class)))
    public ResponseEntity<byte[]> register(
            Caller caller,
            @RequestBody(content = @Content(schema = @Schema(implementation = AnimalRequests.NewAnimal.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        Present present = Present.at(clock, caller.zone());
        Registration registration = request.read(reader(caller, present)::registration);
        return once.perform(caller, request, () -> {
            AnimalRecord animal = store.add(caller, registration, present.now());
            return Reply.created("/api/v1/animals/" + animal.id(), animal.version(), view(animal));
        });
    }

    @GetMapping
    @Operation(summary = "The animals of the organisation")
    @Parameter(
            name = "consignment",
            in = ParameterIn.QUERY,
            description = "only those of this consignment",
            schema = @Schema(type = "string", format = "uuid"))
    @Transactional(readOnly = true)
    public ResponseEntity<Items<AnimalView>> list(Caller caller, Query query) {
        Given<UUID> consignment = query.id("consignment");
        Page page = query.page();
        List<AnimalRecord> found = store.list(caller.organisationId(), consignment.find(), page);
        return page.reply(found, AnimalRecord::id, this::view);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One animal")
    @Transactional(readOnly = true)
    public ResponseEntity<AnimalView> animal(Caller caller, @PathVariable UUID id, Query query) {
        query.orThrow();
        return reply(store.find(caller.organisationId(), id).orElseThrow(AnimalController::notFound));
    }

    @PutMapping("/{id}")
    @Operation(
            summary = "Correct what is known about an animal",
            description = "Needs the role keeper. Replaces all of it but the first weights and lengths, which stay: a"
                    + " field that is left out is not known any more.")
    @Transactional
    public ResponseEntity<AnimalView> change(
            Caller caller,
            @PathVariable UUID id,
            IfMatch ifMatch,
            @RequestBody(content = @Content(schema = @Schema(implementation = AnimalRequests.ChangedAnimal.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        if (store.find(caller.organisationId(), id).isEmpty()) {
            throw notFound();
        }
        AnimalDetails details = request.read(reader(caller, Present.at(clock, caller.zone()))::details);
        return reply(store.change(caller, id, ifMatch, details).orElseThrow(AnimalController::notFound));
    }

    private AnimalReader reader(Caller caller, Present present) {
        return new AnimalReader(reference, present, id -> consignments.existsById(caller.key(id)));
    }

    private AnimalView view(AnimalRecord animal) {
        return AnimalView.of(animal, animals.origin(animal.details()), reference);
    }

    private ResponseEntity<AnimalView> reply(AnimalRecord animal) {
        return ResponseEntity.ok().eTag(Version.tag(animal.version())).body(view(animal));
    }

    private static ProblemException notFound() {
        return ProblemException.notFound("animal");
    }
}
