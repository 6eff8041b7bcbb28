package varanid.intake.sample;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;

/** What other features may know about an animal's samples. */
@Service
public class Samples {

    private final SampleStore store;
    private final Animals animals;
    private final SamplingDefaults known;
    private final SamplingSettings settings;
    private final Clock clock;

    Samples(SampleStore store, Animals animals, SamplingReference reference, SamplingSettings settings, Clock clock) {
        this.store = store;
        this.settings = settings;
        this.animals = animals;
        this.known = reference.defaults();
        this.clock = clock;
    }

    /** The animal's samples with what they come to now, in the order they were taken; none for an unknown animal. */
    @Transactional(readOnly = true)
    public List<KeptSample> list(UUID organisationId, UUID animalId) {
        return store.listStanding(organisationId, animalId).stream()
                .sorted(Comparator.comparing(sample -> sample.row().takenAt()))
                .map(SampleFile::kept)
                .toList();
    }

    /** What samples can be tested by and for. */
    public SamplingDefaults known() {
        return known;
    }

    /** The codes of what can be taken. */
    public static List<String> kinds() {
        return Arrays.stream(SampleKind.values()).map(SampleKind::code).toList();
    }

    /** The codes of how a sample can be stored. */
    public static List<String> storages() {
        return Arrays.stream(Storage.values()).map(Storage::code).toList();
    }

    /** Whether the animal has a sample of that id, superseded or not. */
    @Transactional(readOnly = true)
    public boolean isThere(UUID organisationId, UUID animalId, UUID id) {
        return store.find(organisationId, animalId, id).isPresent();
    }

    /**
     * Reads a sample and keeps it.
     *
     * @return its id
     * @throws ProblemException 404 where the organisation has no such animal, 422 with every fault of the request, 409
     *     where it corrects what was corrected already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(Caller caller, UUID animalId, JsonRequest request) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        Present present = Present.at(clock, caller.zone());
        NewSample sample = request.read(fields -> NewSample.reader(fields, known, present));
        return store.add(caller, animalId, sample).row().id();
    }

    /**
     * Reads what one method found in a sample, and keeps it.
     *
     * @return its id
     * @throws ProblemException as for {@link #keep}
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keepResult(Caller caller, UUID animalId, UUID sampleId, JsonRequest request) {
        SampleRow sample = store.find(caller.organisationId(), animalId, sampleId)
                .orElseThrow(() -> ProblemException.notFound("sample"));
        Present present = Present.at(clock, caller.zone());
        NewResult result = request.read(fields -> NewResult.reader(fields, sample, known, present));
        return store.add(caller, sample, result).row().id();
    }

    /**
     * A result that nothing has corrected, as it was given.
     *
     * @param method the code of what it was examined by
     */
    public record KeptResult(
            UUID id,
            String method,
            String outcome,
            List<Agent> found,
            LocalDate reportedOn,
            Optional<String> laboratory,
            Optional<String> report) {

        /** What was found, by its code, and whether it was called significant. */
        public record Agent(String agent, boolean significant) {}

        public KeptResult {
            found = List.copyOf(found);
        }

        private static KeptResult of(SampleFile.Result result) {
            SampleResultRow row = result.row();
            return new KeptResult(
                    row.id(),
                    row.method(),
                    row.outcome(),
                    result.found().stream()
                            .map(found -> new Agent(found.agent(), Boolean.TRUE.equals(found.significant())))
                            .toList(),
                    row.reportedOn(),
                    Optional.ofNullable(row.laboratory()),
                    Optional.ofNullable(row.report()));
        }
    }

    /** The results of a sample that stands, in the order they were recorded; none for any other. */
    @Transactional(readOnly = true)
    public List<KeptResult> listResults(UUID organisationId, UUID animalId, UUID sampleId) {
        return store.listStanding(organisationId, animalId).stream()
                .filter(sample -> sample.row().id().equals(sampleId))
                .flatMap(sample -> sample.standingResults().stream())
                .map(KeptResult::of)
                .toList();
    }

    /**
     * Reads where a sample is on its way, and keeps it.
     *
     * @throws ProblemException as for {@link #keep}
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void keepStep(Caller caller, UUID animalId, UUID sampleId, JsonRequest request) {
        SampleRow sample = store.find(caller.organisationId(), animalId, sampleId)
                .orElseThrow(() -> ProblemException.notFound("sample"));
        Present present = Present.at(clock, caller.zone());
        NewStep step = request.read(fields -> NewStep.reader(fields, sample, present));
        store.add(caller, sample, step);
    }

    /** The codes of what happens to a sample on its way. */
    public static List<String> steps() {
        return Arrays.stream(Step.values()).map(Step::code).toList();
    }

    /** The same samples with what a page about the animal says of each, the last taken first. */
    @Transactional(readOnly = true)
    public List<SampleWords> listWords(UUID organisationId, UUID animalId) {
        return store.listStanding(organisationId, animalId).stream()
                .sorted(Comparator.comparing((SampleFile sample) -> sample.row().takenAt())
                        .reversed())
                .map(SampleWords::of)
                .toList();
    }

    /** How probable freedom is after its negative samples, for each infection with a negative one. For clinicians. */
    @Transactional(readOnly = true)
    public List<FreedomWords> listFreedom(UUID organisationId, UUID animalId, LocalDate asOf) {
        return animals.find(organisationId, animalId)
                .map(animal -> FreedomWords.list(new FreedomReader(
                                animal,
                                settings.get(organisationId),
                                asOf,
                                store.listStanding(organisationId, animalId))
                        .read()))
                .orElse(List.of());
    }
}
