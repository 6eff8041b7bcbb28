package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What a death is for the animals that came together. */
@Schema(name = "CohortAfterDeath")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CohortView(
        UUID consignmentId,

        @Schema(description = "of those that came together, this one included")
        int deaths,

        int unexplained,

        @Schema(description = "asap: a vet within 24 hours") @Nullable
        String urgency,

        List<String> advice,

        @Schema(description = "the others that are still kept here, and where they stand")
        List<MemberView> others,

        String source) {

    @Schema(name = "CohortMember")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record MemberView(
            UUID animalId,
            @Nullable String name,
            @Nullable UUID roomId,
            @Nullable String roomName) {}
}
