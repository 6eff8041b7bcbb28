package varanid.intake.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

@Schema(name = "Report")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ReportView(
        UUID id,
        UUID animalId,
        UUID recordedBy,

        @Schema(description = "when it was told") Instant occurredAt,

        Instant recordedAt,

        @Schema(description = "of occurredAt, in the organisation's zone")
        LocalDate localDate,

        @Nullable UUID supersedes,
        @Nullable UUID supersededBy,

        @Schema(description = "since when nobody can be read from it any more") @Nullable
        PeopleRemoved peopleRemoved,

        Told told) {

    @Schema(name = "ReportPeopleRemoved")
    record PeopleRemoved(Instant at, UUID by) {}
}
