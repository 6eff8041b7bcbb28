package varanid.intake.vet;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
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
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/vet-decisions")
@Tag(name = "Vet's answers", description = "What a vet says, word for word; it stands above what is worked out")
class VetDecisionController {

    private final VetAnswers answers;
    private final VetAnswerRows rows;
    private final Animals animals;
    private final Terms terms;
    private final Once once;
    private final Clock clock;

    VetDecisionController(
            VetAnswers answers, VetAnswerRows rows, Animals animals, Terms terms, Once once, Clock clock) {
        this.answers = answers;
        this.rows = rows;
        this.animals = animals;
        this.terms = terms;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Keep a vet's answer",
            description = "Needs the role clinician; keeper and administrator may not. The answer stands above what is"
                    + " worked out from everything recorded up to seenUpTo, until a vet gives a later one. One that"
                    + " was given before the answer that stands is kept and changes nothing.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = AnswerView.class)))
    public ResponseEntity<byte[]> answer(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = AnswerView.AnswerBody.class)))
                    JsonRequest request) {
        caller.require(Role.CLINICIAN);
        Present present = Present.at(clock, caller.zone());
        requireAnimal(caller, animalId);
        NewAnswer answer = request.read(fields -> NewAnswer.reader(fields, terms, present));
        return once.perform(caller, request, () -> {
            VetAnswer kept = answers.keep(caller.organisationId(), animalId, caller.personId(), answer);
            return Reply.created(path(animalId, kept.id()), null, AnswerView.of(kept));
        });
    }

    @GetMapping
    @Operation(summary = "What vets answered about an animal, in the order it was recorded")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<AnswerView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        requireAnimal(caller, animalId);
        List<VetAnswer> fetched = answers.read(
                caller.organisationId(),
                animalId,
                rows.list(caller.organisationId(), animalId, page.after(), page.fetch()));
        return page.reply(fetched, VetAnswer::id, AnswerView::of);
    }

    @GetMapping("/{answerId}")
    @Operation(summary = "One answer of a vet")
    @Transactional(readOnly = true)
    public ResponseEntity<AnswerView> answer(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID answerId, Query query) {
        query.orThrow();
        return ResponseEntity.ok(AnswerView.of(answers.get(caller.organisationId(), animalId, answerId)));
    }

    @PostMapping("/{answerId}/confirmation")
    @Operation(
            summary = "Vouch for the writer of an answer",
            description = "Needs the role clinician. From then on the answer counts as confirmed, and may lower what"
                    + " is worked out. Confirming what is confirmed changes nothing.")
    @ApiResponse(
            responseCode = "200",
            description = "Confirmed",
            content = @Content(schema = @Schema(implementation = AnswerView.class)))
    public ResponseEntity<byte[]> confirm(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID answerId,
            @RequestBody(content = @Content(schema = @Schema(implementation = ConfirmationRequest.class)))
                    JsonRequest request) {
        caller.require(Role.CLINICIAN);
        answers.get(caller.organisationId(), animalId, answerId);
        ConfirmationRequest wanted = request.read(ConfirmationRequest::reader);
        return once.perform(
                caller,
                request,
                () -> Reply.ok(AnswerView.of(answers.confirm(
                        caller.organisationId(),
                        animalId,
                        answerId,
                        caller.personId(),
                        Optional.ofNullable(wanted.note())))));
    }

    private void requireAnimal(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }

    private static String path(UUID animalId, UUID id) {
        return "/api/v1/animals/" + animalId + "/vet-decisions/" + id;
    }

    @Schema(name = "VetDecisionConfirmation")
    record ConfirmationRequest(
            @Schema(description = "how the writer was made sure of", maxLength = 2000) @Nullable
            String note) {

        static Supplier<ConfirmationRequest> reader(JsonFields fields) {
            Given<String> note = fields.prose("note", 2_000);
            return () -> new ConfirmationRequest(note.orNull());
        }
    }
}
