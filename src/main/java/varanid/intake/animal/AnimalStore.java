package varanid.intake.animal;

import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.id.RowKey;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.Page;

/** Stores animals and finds them again. Works within the caller's transaction. */
@Component
class AnimalStore {

    private static final TypeReference<Map<String, Evidence>> EVIDENCE = new TypeReference<>() {};
    private static final TypeReference<List<Paper>> PAPERS = new TypeReference<>() {};
    private static final TypeReference<List<WeightReading>> WEIGHTS = new TypeReference<>() {};
    private static final TypeReference<List<LengthReading>> LENGTHS = new TypeReference<>() {};

    private final AnimalRows rows;
    private final Ids ids;
    private final JsonMapper json;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;

    AnimalStore(AnimalRows rows, Ids ids, JsonMapper json, OrganisationLock lock, ApplicationEventPublisher events) {
        this.rows = rows;
        this.ids = ids;
        this.json = json;
        this.lock = lock;
        this.events = events;
    }

    AnimalRecord add(Caller caller, Registration registration, Instant now) {
        lock.hold(caller.organisationId());
        AnimalRow row = new AnimalRow(
                caller.key(ids.next()),
                json.writeValueAsString(registration.weights()),
                json.writeValueAsString(registration.lengths()),
                caller.personId(),
                now);
        fill(row, registration.details());
        return save(row);
    }

    Optional<AnimalRecord> change(Caller caller, UUID id, IfMatch ifMatch, AnimalDetails details) {
        lock.hold(caller.organisationId());
        return rows.findById(caller.key(id)).map(row -> {
            ifMatch.require(row.version);
            fill(row, details);
            return save(row);
        });
    }

    private AnimalRecord save(AnimalRow row) {
        AnimalRecord saved = read(rows.saveAndFlush(row));
        events.publishEvent(AnimalChanged.of(row.key.organisationId(), row.key.id()));
        return saved;
    }

    Optional<AnimalRecord> find(UUID organisationId, UUID id) {
        return rows.findById(new RowKey(organisationId, id)).map(this::read);
    }

    List<AnimalRecord> list(UUID organisationId, Optional<UUID> consignmentId, Page page) {
        List<AnimalRow> found = consignmentId
                .map(consignment -> rows.listOfConsignment(organisationId, consignment, page.after(), page.fetch()))
                .orElseGet(() -> rows.list(organisationId, page.after(), page.fetch()));
        return found.stream().map(this::read).toList();
    }

    List<AnimalRecord> list(UUID organisationId, UUID after, int most) {
        return rows.list(organisationId, after, Limit.of(most)).stream()
                .map(this::read)
                .toList();
    }

    /** All of a consignment. */
    List<AnimalRecord> listOfConsignment(UUID organisationId, UUID consignmentId) {
        return rows.listOfConsignment(organisationId, consignmentId, new UUID(0, 0), Limit.unlimited()).stream()
                .map(this::read)
                .toList();
    }

    Map<UUID, String> findTags(UUID organisationId, Collection<UUID> ids) {
        return rows.listTagged(organisationId, ids).stream()
                .collect(Collectors.toMap(AnimalRows.Tagged::id, AnimalRows.Tagged::tag));
    }

    boolean hasAny(UUID organisationId) {
        return !rows.list(organisationId, new UUID(0, 0), Limit.of(1)).isEmpty();
    }

    private void fill(AnimalRow row, AnimalDetails details) {
        row.consignmentId = details.consignmentId();
        row.name = details.name();
        row.tag = details.tag();
        row.speciesName = details.species();
        row.speciesAuthority = details.authority();
        row.lifeStage = details.lifeStage().code();
        row.sex = details.sex().code();
        row.declaredOrigin = details.declaredOrigin();
        row.transponder = details.transponder();
        row.arrivedOn = details.arrivedOn();
        row.notes = details.notes();
        row.evidence = json.writeValueAsString(details.evidence());
        row.papers = json.writeValueAsString(details.papers());
    }

    private AnimalRecord read(AnimalRow row) {
        AnimalDetails details = new AnimalDetails(
                row.name,
                row.tag,
                row.speciesName,
                row.speciesAuthority,
                Arrays.stream(LifeStage.values())
                        .filter(stage -> stage.code().equals(row.lifeStage))
                        .findFirst()
                        .orElseThrow(),
                Arrays.stream(Sex.values())
                        .filter(sex -> sex.code().equals(row.sex))
                        .findFirst()
                        .orElseThrow(),
                row.declaredOrigin,
                json.readValue(row.evidence, EVIDENCE),
                json.readValue(row.papers, PAPERS),
                row.transponder,
                row.consignmentId,
                row.arrivedOn,
                row.notes);
        return new AnimalRecord(
                row.key.id(),
                row.version,
                details,
                json.readValue(row.firstWeights, WEIGHTS),
                json.readValue(row.firstLengths, LENGTHS),
                row.recordedBy,
                row.recordedAt);
    }
}
