package varanid.intake.animal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What other features may know about an animal. */
@Service
public class Animals {

    private final AnimalStore store;
    private final OriginAssessor origins;
    private final ReferenceData reference;

    Animals(AnimalStore store, ReferenceData reference) {
        this.store = store;
        this.reference = reference;
        this.origins = new OriginAssessor(reference.provenance());
    }

    /** The animal, where the organisation has it. */
    @Transactional(readOnly = true)
    public Optional<Newcomer> find(UUID organisationId, UUID id) {
        return store.find(organisationId, id).map(this::newcomer);
    }

    /** The animals that came together, in the order they were registered. */
    @Transactional(readOnly = true)
    public List<Newcomer> listOfConsignment(UUID organisationId, UUID consignmentId) {
        return store.listOfConsignment(organisationId, consignmentId).stream()
                .map(this::newcomer)
                .toList();
    }

    /** What was read of the animal when it was registered, where the organisation has it. */
    @Transactional(readOnly = true)
    public Optional<FirstReadings> findFirstReadings(UUID organisationId, UUID id) {
        return store.find(organisationId, id)
                .map(animal -> new FirstReadings(animal.details().lifeStage(), animal.weights(), animal.lengths()));
    }

    private Newcomer newcomer(AnimalRecord animal) {
        AnimalDetails details = animal.details();
        OriginView origin = origin(details);
        return new Newcomer(
                animal.id(),
                Optional.ofNullable(details.name()).or(() -> Optional.ofNullable(details.tag())),
                Optional.ofNullable(details.tag()),
                Optional.ofNullable(details.species()),
                details.lifeStage(),
                Optional.ofNullable(details.declaredOrigin()),
                details.evidence(),
                origin.steering(),
                origin.assessed(),
                Optional.ofNullable(details.consignmentId()),
                Optional.ofNullable(details.arrivedOn()),
                animal.recordedAt());
    }

    OriginView origin(AnimalDetails details) {
        @Nullable String declared = details.declaredOrigin();
        return origins.assess(Optional.ofNullable(declared).map(reference::getSourceCode), details.evidence());
    }

    /**
     * An animal as other features see it.
     *
     * @param id of the animal
     * @param name what people call it, else its tag
     * @param tag what stands on its cage
     * @param species genus and species
     * @param lifeStage as recorded; unknown where it is not
     * @param declaredOrigin the CITES source code that somebody stated
     * @param evidence answers to the questions about origin, by their id; those not answered are left out
     * @param steeringOrigin the CITES source code that plans go by: the riskier of declared and assessed
     * @param assessedOrigin what the evidence says
     * @param consignmentId what it came with
     * @param arrivedOn in the organisation's zone
     * @param recordedAt when it was registered
     */
    public record Newcomer(
            UUID id,
            Optional<String> name,
            Optional<String> tag,
            Optional<String> species,
            LifeStage lifeStage,
            Optional<String> declaredOrigin,
            Map<String, Evidence> evidence,
            String steeringOrigin,
            AssessedOrigin assessedOrigin,
            Optional<UUID> consignmentId,
            Optional<LocalDate> arrivedOn,
            Instant recordedAt) {}

    /**
     * What was read of an animal when it was registered; never changed.
     *
     * @param lifeStage as it is recorded now
     * @param weights in the order they were given, which is how a correction names them
     * @param lengths in the same manner
     */
    public record FirstReadings(LifeStage lifeStage, List<WeightReading> weights, List<LengthReading> lengths) {}
}
