package varanid.intake.sample;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.platform.time.Present;
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
@RequestMapping("/api/v1/animals/{animalId}/samples")
@Tag(name = "Samples", description = "What was taken from an animal, where it went, what a laboratory found")
class SampleController {

    private final SampleStore store;
    private final Animals animals;
    private final SamplingDefaults known;
    private final Once once;
    private final Clock clock;

    SampleController(SampleStore store, Animals animals, SamplingReference reference, Once once, Clock clock) {
        this.store = store;
        this.animals = animals;
        this.known = reference.defaults();
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Write down a sample",
            description = "Needs the role keeper. With supersedes it corrects an earlier one, whose steps and results"
                    + " stay with it.")
    @ApiResponse(
            responseCode = "201",
            description = "Written down",
            content = @Content(schema = @Schema(implementation = SampleView.class)))
    public ResponseEntity<byte[]> add(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewSample.Body.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        mustExist(caller, animalId);
        Present present = Present.at(clock, caller.zone());
        NewSample sample = request.read(fields -> NewSample.reader(fields, known, present));
        return once.perform(caller, request, () -> {
            SampleFile file = store.add(caller, animalId, sample);
            return Reply.created(path(animalId, file.row().id()), null, SampleView.of(file, null));
        });
    }

    @GetMapping
    @Operation(summary = "The samples of an animal, corrected ones too, in the order they were recorded")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<SampleView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        mustExist(caller, animalId);
        List<SampleFile> files = store.list(caller.organisationId(), animalId, page);
        Map<UUID, UUID> successors = store.successors(
                caller.organisationId(),
                files.stream().map(file -> file.row().id()).toList());
        return page.reply(
                files,
                file -> file.row().id(),
                file -> SampleView.of(file, successors.get(file.row().id())));
    }

    @GetMapping("/{sampleId}")
    @Operation(summary = "One sample with its steps and results, superseded ones too")
    @Transactional(readOnly = true)
    public ResponseEntity<SampleView> sample(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID sampleId, Query query) {
        query.orThrow();
        SampleRow row = get(caller, animalId, sampleId);
        return ResponseEntity.ok(SampleView.of(
                store.open(caller.organisationId(), row),
                store.findSuccessor(caller.organisationId(), sampleId).orElse(null)));
    }

    @PostMapping("/{sampleId}/steps")
    @Operation(
            summary = "Say that a sample was sent, received, lost or unusable",
            description = "Needs the role keeper.")
    @ApiResponse(
            responseCode = "201",
            description = "Written down",
            content = @Content(schema = @Schema(implementation = SampleView.StepView.class)))
    public ResponseEntity<byte[]> addStep(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID sampleId,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewStep.Body.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        SampleRow sample = get(caller, animalId, sampleId);
        Present present = Present.at(clock, caller.zone());
        NewStep step = request.read(fields -> NewStep.reader(fields, sample, present));
        return once.perform(caller, request, () -> {
            SampleStepRow row = store.add(caller, sample, step);
            return Reply.created(path(animalId, sampleId), null, SampleView.StepView.of(row, null));
        });
    }

    @PostMapping("/{sampleId}/results")
    @Operation(
            summary = "Write down what one method found in a sample",
            description = "Needs the role keeper or clinician. A positive one may restart or pause the quarantine clock"
                    + " of everybody around the animal, from the day it was reported.")
    @ApiResponse(
            responseCode = "201",
            description = "Written down",
            content = @Content(schema = @Schema(implementation = SampleView.ResultView.class)))
    public ResponseEntity<byte[]> addResult(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID sampleId,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewResult.Body.class)))
                    JsonRequest request) {
        caller.requireKeeperOrClinician();
        SampleRow sample = get(caller, animalId, sampleId);
        Present present = Present.at(clock, caller.zone());
        NewResult result = request.read(fields -> NewResult.reader(fields, sample, known, present));
        return once.perform(caller, request, () -> {
            SampleFile.Result kept = store.add(caller, sample, result);
            return Reply.created(path(animalId, sampleId), null, SampleView.ResultView.of(kept, null));
        });
    }

    private void mustExist(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }

    private SampleRow get(Caller caller, UUID animalId, UUID sampleId) {
        return store.find(caller.organisationId(), animalId, sampleId)
                .orElseThrow(() -> ProblemException.notFound("sample"));
    }

    private static String path(UUID animalId, UUID id) {
        return "/api/v1/animals/" + animalId + "/samples/" + id;
    }
}
