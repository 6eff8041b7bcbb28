package varanid.intake.attachment;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.WebRequest;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.FileUpload;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Query;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/attachments")
@Tag(name = "Attachments", description = "Photographs and laboratory reports of an animal, a look or a sample")
class AttachmentController {

    private static final ProblemType WITHDRAWN =
            new ProblemType("attachment-withdrawn", 410, "The attachment was withdrawn");

    private final Attachments attachments;
    private final AttachmentStore store;
    private final AttachmentKeeper keeper;

    AttachmentController(Attachments attachments, AttachmentStore store, AttachmentKeeper keeper) {
        this.attachments = attachments;
        this.store = store;
        this.keeper = keeper;
    }

    @PostMapping
    @Operation(
            summary = "Add a photograph or a laboratory report",
            description =
                    "Needs the role keeper or clinician. What the file is, is read from its bytes: a JPEG or PNG of"
                            + " at most 10 MiB and 50 million pixels, or a PDF of at most 20 MiB. Of a picture only the pixels"
                            + " are kept; it is written anew as JPEG, upright, without the place it was taken at. A PDF that is"
                            + " encrypted, or in which anything acts by itself, is refused.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = AttachmentView.class)))
    public ResponseEntity<byte[]> add(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(
                            content =
                                    @Content(
                                            mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                                            schema = @Schema(implementation = AttachmentBody.class)))
                    FileUpload upload) {
        return keeper.add(caller, animalId, upload, UnaryOperator.identity());
    }

    @GetMapping
    @Operation(summary = "The attachments of an animal, in the order they were added, withdrawn ones too")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<AttachmentView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        attachments.requireAnimal(caller, animalId);
        return page.reply(
                store.list(
                        caller.organisationId(),
                        animalId,
                        page.after(),
                        page.fetch().max()),
                KeptAttachment::id,
                AttachmentView::of);
    }

    @GetMapping("/{id}")
    @Operation(summary = "What an attachment is, and where its bytes are")
    @Transactional(readOnly = true)
    public ResponseEntity<AttachmentView> attachment(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(AttachmentView.of(attachments.get(caller, animalId, id)));
    }

    @GetMapping("/{id}/content")
    @Operation(
            summary = "The bytes of an attachment",
            description = "A picture as JPEG, a report as PDF to be saved, never to be shown by a browser. The ETag is"
                    + " the SHA-256. 410 where it was withdrawn.")
    @ApiResponse(
            responseCode = "200",
            description = "The bytes",
            content = {
                @Content(mediaType = CheckedFile.JPEG, schema = @Schema(type = "string", format = "binary")),
                @Content(mediaType = CheckedFile.PDF, schema = @Schema(type = "string", format = "binary"))
            })
    @Transactional(readOnly = true)
    public ResponseEntity<byte[]> content(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query, WebRequest request) {
        query.orThrow();
        KeptAttachment kept = getShown(caller, animalId, id);
        String eTag = '"' + kept.content().sha256() + '"';
        return serve(
                request,
                eTag,
                kept.content().mediaType(),
                kept.content().isPicture() ? "inline" : "attachment",
                kept.id() + (kept.content().isPicture() ? ".jpg" : ".pdf"),
                () -> store.content(caller.organisationId(), animalId, id));
    }

    @GetMapping("/{id}/thumbnail")
    @Operation(
            summary = "A picture, small",
            description = "JPEG, at most 320 pixels wide and high; 404 of a report, 410 where it was withdrawn.")
    @ApiResponse(
            responseCode = "200",
            description = "The bytes",
            content = @Content(mediaType = CheckedFile.JPEG, schema = @Schema(type = "string", format = "binary")))
    @Transactional(readOnly = true)
    public ResponseEntity<byte[]> thumbnail(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query, WebRequest request) {
        query.orThrow();
        KeptAttachment kept = getShown(caller, animalId, id);
        if (!kept.content().isPicture()) {
            throw ProblemException.notFound("picture");
        }
        return serve(
                request,
                "\"small-" + kept.content().sha256() + '"',
                CheckedFile.JPEG,
                "inline",
                kept.id() + "-small.jpg",
                () -> store.thumbnail(caller.organisationId(), animalId, id));
    }

    @PostMapping("/{id}/withdrawal")
    @Operation(
            summary = "Withdraw an attachment",
            description =
                    "Needs the role keeper or clinician. Its bytes are not served any more; that it was there, and"
                            + " why it is not, stays.")
    @ApiResponse(
            responseCode = "200",
            description = "Withdrawn",
            content = @Content(schema = @Schema(implementation = AttachmentView.class)))
    public ResponseEntity<byte[]> withdraw(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID id,
            @RequestBody(content = @Content(schema = @Schema(implementation = WithdrawalBody.class)))
                    JsonRequest request) {
        return keeper.withdraw(caller, animalId, id, request);
    }

    /** For nobody to keep but the reader's own browser, and that asks each time; nothing in it may act. */
    private static ResponseEntity<byte[]> serve(
            WebRequest request,
            String eTag,
            String mediaType,
            String disposition,
            String fileName,
            Supplier<Optional<byte[]>> bytes) {
        boolean known = request.checkNotModified(eTag);
        ResponseEntity.BodyBuilder reply = ResponseEntity.status(known ? 304 : 200)
                .eTag(eTag)
                .header("Cache-Control", "private, no-cache")
                .header("Content-Security-Policy", "default-src 'none'; sandbox")
                .header("X-Content-Type-Options", "nosniff")
                .header("Cross-Origin-Resource-Policy", "same-origin");
        if (known) {
            return reply.build();
        }
        return reply.contentType(MediaType.parseMediaType(mediaType))
                .header("Content-Disposition", disposition + "; filename=\"" + fileName + '"')
                .body(bytes.get().orElseThrow(() -> ProblemException.notFound("attachment")));
    }

    private KeptAttachment getShown(Caller caller, UUID animalId, UUID id) {
        KeptAttachment kept = attachments.get(caller, animalId, id);
        if (kept.withdrawal().isPresent()) {
            throw new ProblemException(
                    WITHDRAWN,
                    "It was withdrawn at " + kept.withdrawal().get().at() + "; what it was is still to be read.");
        }
        return kept;
    }

    static String path(UUID animalId, UUID id) {
        return "/api/v1/animals/" + animalId + "/attachments/" + id;
    }

    /** Only described here: {@link NewAttachment} reads it. */
    @Schema(name = "NewAttachment")
    record AttachmentBody(
            @Schema(type = "string", format = "binary", description = "JPEG, PNG or PDF")
            String file,

            @Schema(description = "the look that it belongs to") @Nullable
            UUID assessment,

            @Schema(description = "the sample that it belongs to; not beside assessment") @Nullable
            UUID sample,

            @Schema(description = "which finding of that assessment it shows", example = "mites") @Nullable
            String finding,

            @Schema(maxLength = 500) @Nullable String caption,

            @Schema(description = "when it was taken or made; unknown if left out; not in the future") @Nullable
            Instant takenAt) {}

    /** Only described here. */
    @Schema(name = "AttachmentWithdrawal")
    record WithdrawalBody(@Schema(maxLength = 500) String reason) {}
}
