package varanid.intake.animal;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Declared, assessed and steering origin.
 *
 * @param declared the CITES source code that was stated, if any
 * @param assessed what the evidence says
 * @param points the sum it was decided by
 * @param steering the CITES source code that plans go by: the riskier of the two
 * @param reasons what moved it, heaviest first
 */
@Schema(name = "Origin")
record OriginView(
        @Schema(description = "CITES source code as declared", example = "C") @Nullable
        String declared,

        AssessedOrigin assessed,
        int points,

        @Schema(description = "CITES source code that plans go by: the riskier of the declared and the assessed")
        String steering,

        List<Reason> reasons) {

    /**
     * One thing that moved the assessed origin.
     *
     * @param evidence the question's id, or {@code declared-origin}
     * @param points for the wild where more than zero, for captivity where less
     * @param reason in words
     */
    @Schema(name = "OriginReason")
    record Reason(String evidence, int points, String reason) {}
}
