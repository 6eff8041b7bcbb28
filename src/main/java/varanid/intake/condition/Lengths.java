package varanid.intake.condition;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.animal.Animals;
import varanid.intake.animal.LengthReading;
import varanid.intake.animal.Remark;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Correctable;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** Keeps lengths of animals. */
@Service
public class Lengths {

    private static final Correctable LENGTH = new Correctable("length", "length", "lengths");

    /** Nobody looks further back, and no request gets slow by it. */
    private static final Limit MOST = Limit.of(500);

    /** Later than any reading. */
    private static final LocalDate ALWAYS = LocalDate.of(9999, 12, 31);

    private final LengthRows rows;
    private final Animals animals;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final Ids ids;
    private final Clock clock;

    Lengths(
            LengthRows rows,
            Animals animals,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.animals = animals;
        this.lock = lock;
        this.events = events;
        this.ids = ids;
        this.clock = clock;
    }

    /**
     * A length that stands.
     *
     * @param day local date
     */
    public record MeasuredLength(LocalDate day, LengthReading reading) {}

    /**
     * All lengths that nothing has corrected, those of the registration among them, oldest first.
     *
     * @param zone the organisation's: dates of the registration's lengths are meant there
     */
    @Transactional(readOnly = true)
    public List<MeasuredLength> list(UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf) {
        List<MeasuredLength> found = new ArrayList<>();
        List<LengthReading> first = animals.findFirstReadings(organisationId, animalId)
                .map(Animals.FirstReadings::lengths)
                .orElse(List.of());
        Set<Integer> corrected = rows.listCorrectionsOfFirst(organisationId, animalId).stream()
                .map(row -> Objects.requireNonNull(row.supersedesFirst()))
                .collect(Collectors.toSet());
        for (int i = 0; i < first.size(); i++) {
            LocalDate day = LocalDate.ofInstant(first.get(i).occurredAt(), zone);
            if (!corrected.contains(i) && !day.isAfter(asOf)) {
                found.add(new MeasuredLength(day, first.get(i)));
            }
        }
        rows.listStanding(organisationId, animalId, asOf, MOST)
                .forEach(row -> found.add(new MeasuredLength(row.localDate(), row.reading())));
        found.sort(Comparator.comparing(each -> each.reading().occurredAt()));
        return found;
    }

    /**
     * Reads a length and keeps it.
     *
     * @return its id
     * @throws ProblemException 404 where the organisation has no such animal, 422 with every fault of the request, 409
     *     where it corrects what was corrected already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(Caller caller, UUID animalId, JsonRequest request) {
        Present present = Present.at(clock, caller.zone());
        NewLength given = request.read(fields -> NewLength.read(fields, present));
        return keep(caller, animalId, given).id();
    }

    @Transactional(propagation = Propagation.MANDATORY)
    LengthView keep(Caller caller, UUID animalId, NewLength given) {
        UUID organisation = caller.organisationId();
        lock.hold(organisation);
        Animals.FirstReadings first = animals.findFirstReadings(organisation, animalId)
                .orElseThrow(() -> ProblemException.notFound("animal"));
        if (given.supersedes() != null) {
            mayBeSuperseded(organisation, animalId, given.supersedes());
        }
        if (given.supersedesFirst() != null) {
            mayBeSuperseded(organisation, animalId, given.supersedesFirst(), first);
        }
        Instant now = clock.instant();
        LocalDate date = LocalDate.ofInstant(given.reading().occurredAt(), caller.zone());
        LengthRow row =
                rows.saveAndFlush(new LengthRow(caller.key(ids.next()), animalId, given, date, caller.personId(), now));
        events.publishEvent(AnimalChanged.of(organisation, animalId));
        return view(caller, List.of(row)).get(0);
    }

    private void mayBeSuperseded(UUID organisation, UUID animalId, UUID supersedes) {
        LENGTH.check(
                rows.find(organisation, animalId, supersedes).isPresent(),
                () -> rows.listSuccessors(organisation, List.of(supersedes)).stream()
                        .map(LengthRow::id)
                        .findFirst());
    }

    private void mayBeSuperseded(UUID organisation, UUID animalId, int place, Animals.FirstReadings first) {
        if (place >= first.lengths().size()) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "The animal has no such length in its registration.",
                    List.of(Fault.at(
                            "#/supersedesFirst",
                            "is no place in the animal's lengths",
                            "the place of one of its " + first.lengths().size() + " first lengths, from 0")));
        }
        rows.listCorrectionsOfFirst(organisation, animalId).stream()
                .filter(row -> Objects.equals(row.supersedesFirst(), place))
                .findFirst()
                .map(LengthRow::id)
                .ifPresent(LENGTH::refuse);
    }

    @Transactional(readOnly = true)
    Optional<LengthView> find(Caller caller, UUID animalId, UUID id) {
        return rows.find(caller.organisationId(), animalId, id)
                .map(row -> view(caller, List.of(row)).get(0));
    }

    @Transactional(readOnly = true)
    List<LengthView> list(Caller caller, UUID animalId, Page page) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        return view(caller, rows.list(caller.organisationId(), animalId, page.after(), page.fetch()));
    }

    private List<LengthView> view(Caller caller, List<LengthRow> shown) {
        if (shown.isEmpty()) {
            return List.of();
        }
        Map<UUID, UUID> successors =
                rows
                        .listSuccessors(
                                caller.organisationId(),
                                shown.stream().map(LengthRow::id).toList())
                        .stream()
                        .collect(Collectors.toMap(row -> Objects.requireNonNull(row.supersedes()), LengthRow::id));
        List<MeasuredLength> standing =
                list(caller.organisationId(), caller.zone(), shown.get(0).animalId(), ALWAYS);
        return shown.stream()
                .map(row -> {
                    @Nullable UUID successor = successors.get(row.id());
                    return LengthView.of(row, successor, remarks(row, successor == null, standing));
                })
                .toList();
    }

    /** Lengths that were read together must fit together: those of one day do. */
    private static List<Remark> remarks(LengthRow row, boolean stands, List<MeasuredLength> standing) {
        List<Remark> remarks = new ArrayList<>(row.reading().listRemarks("#"));
        if (stands && row.reading().of() != LengthReading.Part.TAIL_ROOT_WIDTH) {
            // the later of two readings of a part is the one that counts
            List<LengthReading> sameDay = standing.stream()
                    .filter(each -> each.day().equals(row.localDate()))
                    .map(MeasuredLength::reading)
                    .sorted(Comparator.comparing(LengthReading::occurredAt).reversed())
                    .toList();
            LengthReading.findSumRemark("#/value", sameDay).ifPresent(remarks::add);
        }
        return remarks;
    }
}
