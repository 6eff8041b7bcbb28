package varanid.intake.animal;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An animal as it is shown: what was recorded, and what follows from it. */
@Schema(name = "Animal")
record AnimalView(
        UUID id,
        @Nullable String name,
        @Nullable String tag,
        @Nullable SpeciesView species,
        LifeStage lifeStage,
        Sex sex,
        OriginView origin,
        Map<String, Evidence> evidence,
        List<Paper> papers,
        @Nullable Transponder transponder,
        @Nullable UUID consignmentId,
        @Nullable LocalDate arrivedOn,
        @Nullable String notes,
        List<WeightReading> weights,
        List<LengthReading> lengths,

        @Schema(description = "what a person should look at")
        List<Remark> remarks,

        UUID recordedBy,
        Instant recordedAt) {

    /** The species, and its CITES appendix where our list has it. */
    @Schema(name = "Species")
    record SpeciesView(
            String name,
            @Nullable String authority,

            @Schema(description = "I or II; none where the species is not in our list") @Nullable
            String citesAppendix) {}

    static AnimalView of(AnimalRecord animal, OriginView origin, ReferenceData reference) {
        AnimalDetails details = animal.details();
        return new AnimalView(
                animal.id(),
                details.name(),
                details.tag(),
                details.species() == null ? null : species(details.species(), details.authority(), reference),
                details.lifeStage(),
                details.sex(),
                origin,
                details.evidence(),
                details.papers(),
                details.transponder() == null ? null : Transponder.parse(details.transponder()),
                details.consignmentId(),
                details.arrivedOn(),
                details.notes(),
                animal.weights(),
                animal.lengths(),
                Remarks.about(details, animal.weights(), animal.lengths(), reference),
                animal.recordedBy(),
                animal.recordedAt());
    }

    private static SpeciesView species(String name, @Nullable String authority, ReferenceData reference) {
        @Nullable
        String appendix = reference
                .findSpecies(name)
                .map(listed -> listed.appendixOne() ? "I" : "II")
                .orElse(null);
        return new SpeciesView(name, authority, appendix);
    }
}
