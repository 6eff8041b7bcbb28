package varanid.intake.animal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.id.RowKey;

/** What other features may know about an animal. */
@Service
public class Animals {

    private final AnimalStore store;
    private final OriginAssessor origins;
    private final ReferenceData reference;
    private final Consignments consignments;

    Animals(AnimalStore store, ReferenceData reference, Consignments consignments) {
        this.store = store;
        this.consignments = consignments;
        this.reference = reference;
        this.origins = new OriginAssessor(reference.provenance());
    }

    /** The animal, where the organisation has it. */
    @Transactional(readOnly = true)
    public Optional<Newcomer> find(UUID organisationId, UUID id) {
        return store.find(organisationId, id).map(this::newcomer);
    }

    /** What stands on the cages of these animals, by their ids; those without a tag are left out. */
    @Transactional(readOnly = true)
    public Map<UUID, String> findTags(UUID organisationId, Collection<UUID> ids) {
        return store.findTags(organisationId, ids);
    }

    /** Whether the organisation has ever registered an animal. */
    @Transactional(readOnly = true)
    public boolean hasAny(UUID organisationId) {
        return store.hasAny(organisationId);
    }

    /**
     * Animals in the order they were registered, those that left too.
     *
     * @param after the last one that was seen; empty: from the first
     */
    @Transactional(readOnly = true)
    public List<Newcomer> list(UUID organisationId, Optional<UUID> after, int most) {
        return store.list(organisationId, after.orElse(new UUID(0, 0)), most).stream()
                .map(this::newcomer)
                .toList();
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

    /** What is recorded of the animal beside what others steer by, in words; empty where the organisation has no such animal. */
    @Transactional(readOnly = true)
    public Optional<Profile> findProfile(UUID organisationId, UUID id) {
        return store.find(organisationId, id).map(animal -> profile(organisationId, animal));
    }

    private Profile profile(UUID organisationId, AnimalRecord animal) {
        AnimalDetails details = animal.details();
        Map<String, String> questions = new LinkedHashMap<>();
        reference.provenance().questions().forEach(question -> questions.put(question.id(), question.text()));
        List<Answered> evidence = new ArrayList<>();
        questions.forEach((question, text) -> {
            @Nullable Evidence answer = details.evidence().get(question);
            if (answer != null && answer != Evidence.UNKNOWN) {
                evidence.add(new Answered(question, text, answer.code()));
            }
        });
        Optional<String> transponder = Optional.ofNullable(details.transponder());
        return new Profile(
                details.sex().code(),
                transponder,
                transponder.map(number -> Transponder.parse(number).standard().words()),
                Optional.ofNullable(details.declaredOrigin())
                        .map(reference::getSourceCode)
                        .map(SourceCode::meaning),
                origin(details).reasons().stream()
                        .map(OriginView.Reason::reason)
                        .toList(),
                details.papers().stream()
                        .map(paper -> new PaperShown(
                                paper.kind().code(),
                                Optional.ofNullable(paper.number()),
                                Optional.ofNullable(paper.issuedOn()),
                                Optional.ofNullable(paper.validUntil()),
                                paper.remark(details.arrivedOn())))
                        .toList(),
                evidence,
                Optional.ofNullable(details.consignmentId())
                        .flatMap(consignment -> consignments.findById(new RowKey(organisationId, consignment)))
                        .map(row -> new CameWith(
                                row.name(), Optional.ofNullable(row.sender()), Optional.ofNullable(row.notes()))),
                Optional.ofNullable(details.notes()),
                animal.recordedBy());
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

    /**
     * What is recorded of an animal beside what others steer by.
     *
     * @param sex its code
     * @param transponder its number
     * @param transponderStandard what the number could be checked against
     * @param declaredMeaning what the declared source code means, in words
     * @param originReasons what moved the assessed origin, heaviest first
     * @param papers in the order they were given
     * @param evidence questions about origin that were answered with yes or no
     * @param cameWith the consignment
     * @param notes as they were written
     * @param recordedBy the person who registered it
     */
    public record Profile(
            String sex,
            Optional<String> transponder,
            Optional<String> transponderStandard,
            Optional<String> declaredMeaning,
            List<String> originReasons,
            List<PaperShown> papers,
            List<Answered> evidence,
            Optional<CameWith> cameWith,
            Optional<String> notes,
            UUID recordedBy) {}

    /** A paper; its remark is what a person should look at. */
    public record PaperShown(
            String kind,
            Optional<String> number,
            Optional<LocalDate> issuedOn,
            Optional<LocalDate> validUntil,
            Optional<String> remark) {}

    /** A question about origin, in words, and the code of its answer. */
    public record Answered(String question, String text, String answer) {}

    /** A consignment. */
    public record CameWith(String name, Optional<String> sender, Optional<String> notes) {}
}
