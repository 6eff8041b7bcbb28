package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Every condition of ending a quarantine, and how it stands. */
@Schema(name = "ReleaseReview")
public record ReviewView(
        UUID animalId,
        LocalDate asOf,
        List<ConditionView> conditions,

        @Schema(description = "belongs beside every review") String caution,

        @Schema(description = "id and version of the rules") String policy) {

    static ReviewView of(QuarantinePolicy policy, UUID animalId, ReleaseReview review) {
        return new ReviewView(
                animalId,
                review.asOf(),
                review.conditions().stream().map(ConditionView::of).toList(),
                ReleaseReview.CAUTION,
                policy.id() + " " + policy.version());
    }

    @Schema(name = "ReleaseCondition")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record ConditionView(
            @Schema(
                    allowableValues = {
                        "minimum-stay",
                        "vets-word",
                        "stool-negative",
                        "mite-free",
                        "last-look",
                        "weight",
                        "treatment-ended",
                        "vet-approval",
                        "nothing-new-since-vet",
                        "no-legal-hold"
                    })
            String id,

            @Schema(description = "the same in words") String label,

            @Schema(allowableValues = {"met", "unmet", "unknown"})
            String state,

            List<String> evidence,
            @Nullable String missing,
            @Nullable String findOut) {

        static ConditionView of(ReleaseCondition condition) {
            String id = condition.id().code();
            String label = condition.id().label();
            if (condition instanceof ReleaseCondition.Unmet unmet) {
                return new ConditionView(id, label, "unmet", unmet.evidence(), unmet.missing(), null);
            }
            return condition instanceof ReleaseCondition.Unknown unknown
                    ? new ConditionView(id, label, "unknown", unknown.evidence(), null, unknown.findOut())
                    : new ConditionView(id, label, "met", condition.evidence(), null, null);
        }
    }
}
