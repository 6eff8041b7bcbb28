package varanid.intake.sample;

import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * An agent that a result names.
 *
 * @param agent its code
 * @param significant whether a vet or the laboratory called it significant; nothing where nobody said
 */
@Schema(name = "FoundAgent")
record Found(
        @Schema(example = "coccidia") String agent,

        @Schema(description = "whether a vet or the laboratory calls it significant; left out: nobody said") @Nullable
        Boolean significant) {}
