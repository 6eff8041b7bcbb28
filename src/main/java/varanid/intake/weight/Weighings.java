package varanid.intake.weight;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
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
import varanid.intake.animal.Remark;
import varanid.intake.animal.WeightReading;
import varanid.intake.measures.Resolution;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Correctable;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** Keeps weighings of animals. */
@Service
public class Weighings {

    private static final Correctable WEIGHING = new Correctable("weighing", "weighing", "weighings");

    /** More than a year of daily weighings: thresholds look no further back, and no request gets slow by more. */
    static final int MOST = 500;

    /** Later than any weighing. */
    private static final LocalDate ALWAYS = LocalDate.of(9999, 12, 31);

    private final WeighingRows rows;
    private final Animals animals;
    private final WeightRules rules;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final Ids ids;
    private final Clock clock;

    Weighings(
            WeighingRows rows,
            Animals animals,
            WeightReference reference,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.animals = animals;
        this.rules = reference.rules();
        this.lock = lock;
        this.events = events;
        this.ids = ids;
        this.clock = clock;
    }

    /**
     * The days with a weighing that nothing has corrected, those of the registration among them, oldest first; each once.
     *
     * @param zone the organisation's: dates of the registration's weights are meant there
     */
    @Transactional(readOnly = true)
    public List<LocalDate> listDates(UUID organisationId, ZoneId zone, UUID animalId) {
        return listStanding(organisationId, zone, animalId, ALWAYS).stream()
                .map(each -> each.weighing().day())
                .distinct()
                .toList();
    }

    /**
     * What the animal was weighed with last: the next weighing is compared only on the same scale.
     *
     * @param zone the organisation's
     */
    @Transactional(readOnly = true)
    public Optional<Instrument> findLastInstrument(UUID organisationId, ZoneId zone, UUID animalId) {
        List<KnownWeighing> all = listStanding(organisationId, zone, animalId, ALWAYS);
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(Instrument.of(all.get(all.size() - 1).weighing()));
    }

    /**
     * What somebody weighed with.
     *
     * @param unit the UCUM code
     * @param step the scale's smallest step, in that unit
     * @param scale which scale
     */
    public record Instrument(String unit, Optional<BigDecimal> step, Optional<String> scale) {

        private static Instrument of(Weighing weighing) {
            return new Instrument(
                    weighing.mass().unit().code(),
                    Optional.ofNullable(weighing.resolution()).map(Resolution::step),
                    Optional.ofNullable(weighing.scale()));
        }
    }

    /**
     * A weighing that nothing has corrected, as it was given: whoever corrects it gives it again.
     *
     * @param id which one; nothing for one of the registration
     * @param first its place, from 0, in the registration; nothing for any other
     * @param value the number read, in the unit that it was read in
     */
    public record Standing(
            Optional<UUID> id,
            Optional<Integer> first,
            BigDecimal value,
            Instrument with,
            Instant occurredAt,
            Optional<Instant> lastMealAt,
            boolean wet,
            Optional<String> note) {}

    /**
     * One that stands.
     *
     * @param zone the organisation's
     * @param id as {@link WeightWords.On#id}
     */
    @Transactional(readOnly = true)
    public Optional<Standing> findStanding(UUID organisationId, ZoneId zone, UUID animalId, UUID id) {
        Optional<WeighingRow> row = rows.find(organisationId, animalId, id);
        return listStanding(organisationId, zone, animalId, ALWAYS).stream()
                .filter(each -> each.weighing().id().equals(id))
                .findFirst()
                .map(each -> new Standing(
                        row.map(WeighingRow::id),
                        Optional.ofNullable(each.first()),
                        each.weighing().mass().value(),
                        Instrument.of(each.weighing()),
                        each.weighing().at(),
                        row.flatMap(given -> Optional.ofNullable(given.lastMealAt())),
                        each.weighing().wet(),
                        row.flatMap(given -> Optional.ofNullable(given.note()))));
    }

    /**
     * Reads a weighing and keeps it.
     *
     * @return its id
     * @throws ProblemException 404 where the organisation has no such animal, 422 with every fault of the request, 409
     *     where it corrects what was corrected already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(Caller caller, UUID animalId, JsonRequest request) {
        Present present = Present.at(clock, caller.zone());
        NewWeighing given = request.read(fields -> NewWeighing.read(fields, present));
        return keep(caller, animalId, given).id();
    }

    /** All that nothing has corrected, those of the registration among them, oldest first. */
    List<KnownWeighing> listStanding(UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf) {
        List<KnownWeighing> found = new ArrayList<>();
        List<WeightReading> first = animals.findFirstReadings(organisationId, animalId)
                .map(Animals.FirstReadings::weights)
                .orElse(List.of());
        Set<Integer> corrected = rows.listCorrectionsOfFirst(organisationId, animalId).stream()
                .map(row -> Objects.requireNonNull(row.supersedesFirst()))
                .collect(Collectors.toSet());
        for (int i = 0; i < first.size(); i++) {
            KnownWeighing known = KnownWeighing.ofRegistration(animalId, i, first.get(i), zone);
            if (!corrected.contains(i) && !known.weighing().day().isAfter(asOf)) {
                found.add(known);
            }
        }
        rows.listStanding(organisationId, animalId, asOf, Limit.of(MOST))
                .forEach(row -> found.add(KnownWeighing.of(row)));
        found.sort(Comparator.comparing(each -> each.weighing().at()));
        return found;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    WeighingView keep(Caller caller, UUID animalId, NewWeighing given) {
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
        WeighingRow row = rows.saveAndFlush(
                new WeighingRow(caller.key(ids.next()), animalId, given, date, caller.personId(), now));
        events.publishEvent(AnimalChanged.of(organisation, animalId));
        return view(caller, List.of(row)).get(0);
    }

    private void mayBeSuperseded(UUID organisation, UUID animalId, UUID supersedes) {
        WEIGHING.check(
                rows.find(organisation, animalId, supersedes).isPresent(),
                () -> rows.listSuccessors(organisation, List.of(supersedes)).stream()
                        .map(WeighingRow::id)
                        .findFirst());
    }

    private void mayBeSuperseded(UUID organisation, UUID animalId, int place, Animals.FirstReadings first) {
        if (place >= first.weights().size()) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "The animal has no such weight in its registration.",
                    List.of(Fault.at(
                            "#/supersedesFirst",
                            "is no place in the animal's weights",
                            "the place of one of its " + first.weights().size() + " first weights, from 0")));
        }
        rows.listCorrectionsOfFirst(organisation, animalId).stream()
                .filter(row -> Objects.equals(row.supersedesFirst(), place))
                .findFirst()
                .map(WeighingRow::id)
                .ifPresent(WEIGHING::refuse);
    }

    // ---- as they are shown

    @Transactional(readOnly = true)
    Optional<WeighingView> find(Caller caller, UUID animalId, UUID id) {
        return rows.find(caller.organisationId(), animalId, id)
                .map(row -> view(caller, List.of(row)).get(0));
    }

    @Transactional(readOnly = true)
    List<WeighingView> list(Caller caller, UUID animalId, Page page) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        return view(caller, rows.list(caller.organisationId(), animalId, page.after(), page.fetch()));
    }

    private List<WeighingView> view(Caller caller, List<WeighingRow> shown) {
        if (shown.isEmpty()) {
            return List.of();
        }
        Map<UUID, UUID> successors =
                rows
                        .listSuccessors(
                                caller.organisationId(),
                                shown.stream().map(WeighingRow::id).toList())
                        .stream()
                        .collect(Collectors.toMap(row -> Objects.requireNonNull(row.supersedes()), WeighingRow::id));
        List<KnownWeighing> standing = listStanding(
                caller.organisationId(), caller.zone(), shown.get(0).animalId(), ALWAYS);
        return shown.stream()
                .map(row -> {
                    @Nullable UUID successor = successors.get(row.id());
                    return WeighingView.of(row, successor, remarks(row, successor == null, standing));
                })
                .toList();
    }

    private List<Remark> remarks(WeighingRow row, boolean stands, List<KnownWeighing> standing) {
        WeightReading reading = row.reading();
        List<Remark> remarks = new ArrayList<>(reading.listRemarks("#"));
        if (reading.scale() == null) {
            remarks.add(new Remark("#/scale", "without the scale it cannot be compared with any other weighing"));
        }
        if (stands) {
            findDoubt(KnownWeighing.of(row).weighing(), standing).ifPresent(remarks::add);
        }
        return remarks;
    }

    /** Whether it is much heavier or lighter than the nearest earlier weighing, or the nearest later where none is. */
    private Optional<Remark> findDoubt(Weighing weighing, List<KnownWeighing> standing) {
        return standing.stream()
                .map(KnownWeighing::weighing)
                .filter(each -> !each.id().equals(weighing.id()))
                .filter(each -> apart(each, weighing) <= rules.doubt().withinDays())
                .min(Comparator.comparing((Weighing each) -> each.at().isAfter(weighing.at()))
                        .thenComparing(each -> apart(each, weighing))
                        .thenComparing(Weighing::id))
                .filter(near -> differMuch(near.mass().grams(), weighing.mass().grams()))
                .map(near -> new Remark(
                        "#/value",
                        TrendWords.grams(weighing) + " here, and " + TrendWords.grams(near) + " on "
                                + ReaderDates.PAPER.shortDay(near.day()) + ". "
                                + rules.doubt().text()));
    }

    private static long apart(Weighing one, Weighing other) {
        return Math.abs(ChronoUnit.DAYS.between(one.day(), other.day()));
    }

    private boolean differMuch(BigDecimal one, BigDecimal other) {
        return one.max(other).compareTo(one.min(other).multiply(rules.doubt().factor())) > 0;
    }
}
