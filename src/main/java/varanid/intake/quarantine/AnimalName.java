package varanid.intake.quarantine;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

@Schema(name = "AnimalName")
public record AnimalName(
        UUID animalId,

        @Schema(description = "what people call it, else what stands on its cage") @Nullable
        String name) {}
