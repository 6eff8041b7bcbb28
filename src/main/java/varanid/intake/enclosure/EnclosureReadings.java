package varanid.intake.enclosure;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.animal.Animals;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Correctable;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;

/** Keeps readings of enclosures, and says what they say of an animal's surroundings. */
@Service
public class EnclosureReadings {

    private static final Correctable READING = new Correctable("reading", "enclosure reading", "enclosure readings");

    private final EnclosureReadingRows rows;
    private final Animals animals;
    private final HusbandryRules rules;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final JsonMapper json;
    private final Ids ids;
    private final Clock clock;

    EnclosureReadings(
            EnclosureReadingRows rows,
            Animals animals,
            HusbandryReference reference,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            JsonMapper json,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.animals = animals;
        this.rules = reference.rules();
        this.lock = lock;
        this.events = events;
        this.json = json;
        this.ids = ids;
        this.clock = clock;
    }

    /**
     * What the latest standing reading of each quantity and fact says, up to that day. What is too old for the day is
     * in it, but explains no answer.
     *
     * @param asOf the local date to speak of
     * @return empty where the organisation has no such animal, or nothing was read
     */
    @Transactional(readOnly = true)
    public Optional<Surroundings> find(UUID organisationId, UUID animalId, LocalDate asOf) {
        return animals.find(organisationId, animalId).flatMap(animal -> {
            LatestReadings latest = latest(organisationId, animalId, asOf);
            return latest.isEmpty() ? Optional.empty() : Optional.of(judge(animal, latest));
        });
    }

    /** What was read last of each thing, beside its ranges, and what deserves advice; empty where nothing was read. */
    @Transactional(readOnly = true)
    public Optional<SurroundingsWords> findWords(UUID organisationId, UUID animalId, LocalDate asOf) {
        return animals.find(organisationId, animalId).flatMap(animal -> {
            LatestReadings latest = latest(organisationId, animalId, asOf);
            return latest.isEmpty()
                    ? Optional.empty()
                    : Optional.of(SurroundingsWords.of(SurroundingsView.of(animal, asOf, latest, rules)));
        });
    }

    LatestReadings latest(UUID organisationId, UUID animalId, LocalDate asOf) {
        List<KeptReading> standing = rows.listStanding(organisationId, animalId, asOf).stream()
                .map(row -> new KeptReading(row.id(), row.occurredAt(), row.localDate(), given(row)))
                .toList();
        return new LatestReadings(standing, asOf, rules);
    }

    /** Without a species only what holds for all is judged by. */
    static Surroundings judge(Animals.Newcomer animal, LatestReadings latest) {
        return latest.judge(animal.species().orElse(""), animal.lifeStage().code());
    }

    /**
     * Reads a reading and keeps it.
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
        NewReading given = request.read(fields -> NewReading.read(fields, rules, present));
        return keep(caller, animalId, given).id();
    }

    @Transactional(propagation = Propagation.MANDATORY)
    EnclosureReadingRow keep(Caller caller, UUID animalId, NewReading reading) {
        lock.hold(caller.organisationId());
        if (reading.supersedes() != null) {
            mayBeSuperseded(caller, animalId, reading.supersedes());
        }
        EnclosureReadingRow kept = rows.saveAndFlush(new EnclosureReadingRow(
                caller.key(ids.next()),
                animalId,
                caller.personId(),
                reading.occurredAt(),
                clock.instant(),
                LocalDate.ofInstant(reading.occurredAt(), caller.zone()),
                reading.supersedes(),
                json.writeValueAsString(reading.given())));
        events.publishEvent(AnimalChanged.of(caller.organisationId(), animalId));
        return kept;
    }

    private void mayBeSuperseded(Caller caller, UUID animalId, UUID supersedes) {
        READING.check(
                rows.find(caller.organisationId(), animalId, supersedes).isPresent(),
                () -> rows.findSuccessor(caller.organisationId(), supersedes).map(EnclosureReadingRow::id));
    }

    GivenReading given(EnclosureReadingRow row) {
        return json.readValue(row.given(), GivenReading.class);
    }

    /** What can be measured and said of an enclosure, and how. */
    public HusbandryRules rules() {
        return rules;
    }
}
