package varanid.intake.attachment;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

@Schema(name = "Attachment")
@JsonInclude(JsonInclude.Include.NON_NULL)
record AttachmentView(
        UUID id,
        UUID animalId,
        @Nullable UUID assessment,
        @Nullable UUID sample,
        @Nullable String finding,
        @Nullable String caption,
        @Nullable Instant takenAt,
        UUID recordedBy,
        Instant recordedAt,

        @Schema(allowableValues = {"image/jpeg", "application/pdf"})
        String mediaType,

        int bytes,

        @Schema(description = "of the bytes that are served")
        String sha256,

        @Nullable Integer width,
        @Nullable Integer height,
        @Nullable Integer pages,

        @Schema(description = "from then on its bytes are not served") @Nullable
        WithdrawnView withdrawn,

        @Schema(description = "where its bytes are") @Nullable
        String content,

        @Schema(description = "where the picture is, small") @Nullable
        String thumbnail) {

    @Schema(name = "AttachmentWithdrawn")
    record WithdrawnView(Instant at, UUID by, String reason) {}

    static AttachmentView of(KeptAttachment kept) {
        String path = AttachmentController.path(kept.animalId(), kept.id());
        boolean shown = kept.withdrawal().isEmpty();
        KeptAttachment.Content content = kept.content();
        return new AttachmentView(
                kept.id(),
                kept.animalId(),
                kept.assessmentId().orElse(null),
                kept.sampleId().orElse(null),
                kept.finding().orElse(null),
                kept.caption().orElse(null),
                kept.takenAt().orElse(null),
                kept.recordedBy(),
                kept.recordedAt(),
                content.mediaType(),
                content.bytes(),
                content.sha256(),
                content.width().orElse(null),
                content.height().orElse(null),
                content.pages().orElse(null),
                kept.withdrawal()
                        .map(each -> new WithdrawnView(each.at(), each.by(), each.reason()))
                        .orElse(null),
                shown ? path + "/content" : null,
                shown && content.isPicture() ? path + "/thumbnail" : null);
    }
}
