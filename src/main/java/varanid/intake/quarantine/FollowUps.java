package varanid.intake.quarantine;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.KeptLook;
import varanid.intake.assessment.Looks;
import varanid.intake.diary.Diary;
import varanid.intake.platform.id.RowKey;
import varanid.intake.sample.KeptSample;
import varanid.intake.sample.Samples;
import varanid.intake.vet.Recommendation;
import varanid.intake.vet.RecommendationCourse;
import varanid.intake.vet.Recommendations;
import varanid.intake.vet.VetAnswer;
import varanid.intake.weight.Weighings;

/** How the quarantine of animals stands: worked out from what is recorded whenever it is asked for. */
@Service
public class FollowUps {

    static final String STOOL = "stool";
    static final List<String> MITES_AND_TICKS = List.of("mites", "ticks");

    private final PlacementRows placements;
    private final Rooms rooms;
    private final RoomBooks books;
    private final StayRules stays;
    private final Animals animals;
    private final Looks looks;
    private final Diary diary;
    private final Samples samples;
    private final Weighings weighings;
    private final LegalHolds holds;
    private final Recommendations recommendations;
    private final QuarantinePolicy policy;

    FollowUps(
            PlacementRows placements,
            Rooms rooms,
            RoomBooks books,
            StayRules stays,
            Animals animals,
            Looks looks,
            Diary diary,
            Samples samples,
            Weighings weighings,
            LegalHolds holds,
            Recommendations recommendations,
            QuarantinePolicy policy) {
        this.placements = placements;
        this.rooms = rooms;
        this.books = books;
        this.stays = stays;
        this.animals = animals;
        this.looks = looks;
        this.diary = diary;
        this.samples = samples;
        this.weighings = weighings;
        this.holds = holds;
        this.recommendations = recommendations;
        this.policy = policy;
    }

    /**
     * How an animal's quarantine stands; empty where the organisation has no such animal.
     *
     * @param zone the organisation's: dates are meant there
     */
    @Transactional(readOnly = true)
    public Optional<FollowUp> find(UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf) {
        return animals.find(organisationId, animalId).map(animal -> new One(organisationId, zone, animal, asOf).read());
    }

    /** Animals that stand in a room for quarantine now, in id order: those after one, at most so many. */
    @Transactional(readOnly = true)
    public List<UUID> listAnimals(UUID organisationId, UUID after, Limit limit) {
        return placements.listAnimalsInRoomsOfKind(organisationId, RoomKind.QUARANTINE.code(), after, limit);
    }

    /** Where an animal was placed, and why it left, one after the other; what was withdrawn is left out. */
    @Transactional(readOnly = true)
    public List<Move> listMoves(UUID organisationId, UUID animalId) {
        return placements.listStanding(organisationId, animalId).stream()
                .map(row -> new Move(
                        row.onDay,
                        Optional.ofNullable(row.roomId)
                                .flatMap(room -> rooms.findById(new RowKey(organisationId, room)))
                                .map(room -> new FollowUp.Place(room.id(), room.name())),
                        Optional.ofNullable(row.because),
                        Optional.ofNullable(row.reason),
                        row.recordedBy,
                        row.recordedAt))
                .toList();
    }

    /**
     * An animal came into a room, or left.
     *
     * @param room nothing where it left
     * @param because why it left, by its code
     * @param reason what was written down of it
     */
    public record Move(
            LocalDate on,
            Optional<FollowUp.Place> room,
            Optional<String> because,
            Optional<String> reason,
            UUID recordedBy,
            Instant recordedAt) {}

    /** Who stands in a room at the end of a day; empty where the organisation has no such room. */
    @Transactional(readOnly = true)
    public Optional<Occupants> findOccupants(UUID organisationId, UUID roomId, LocalDate asOf) {
        return rooms.findById(new RowKey(organisationId, roomId))
                .map(room -> new Occupants(
                        new FollowUp.Place(room.id(), room.name()),
                        books.open(organisationId, roomId, asOf).read(asOf).animals().stream()
                                .sorted(Comparator.comparing(UUID::toString))
                                .toList()));
    }

    /**
     * A room and who stands in it.
     *
     * @param animals in the order of their making
     */
    public record Occupants(FollowUp.Place room, List<UUID> animals) {
        public Occupants {
            animals = List.copyOf(animals);
        }
    }

    /** What was stated last, up to that day, about an authority's hold on an animal. */
    @Transactional(readOnly = true)
    public Optional<Hold> findHold(UUID organisationId, UUID animalId, LocalDate asOf) {
        return holds.find(organisationId, animalId, asOf)
                .map(row -> new Hold(
                        row.state,
                        row.onDay,
                        Optional.ofNullable(row.authority),
                        Optional.ofNullable(row.reference),
                        Optional.ofNullable(row.note)));
    }

    /**
     * A statement about an authority's hold.
     *
     * @param state {@code held}, {@code released} or {@code none}
     */
    public record Hold(
            String state,
            LocalDate on,
            Optional<String> authority,
            Optional<String> reference,
            Optional<String> note) {}

    /** The reading of one animal's follow-up. */
    private final class One {

        private final UUID organisation;
        private final ZoneId zone;
        private final Animals.Newcomer animal;
        private final LocalDate asOf;
        private final List<PlacementRow> moves;
        private final List<KeptLook> seen;
        private final List<VetAnswer> answers;
        private final Optional<RecommendationCourse> course;
        private final Optional<Recommendation> answered;
        private final Stage stage;

        One(UUID organisation, ZoneId zone, Animals.Newcomer animal, LocalDate asOf) {
            this.organisation = organisation;
            this.zone = zone;
            this.animal = animal;
            this.asOf = asOf;
            this.moves = placements.listStanding(organisation, animal.id()).stream()
                    .filter(row -> !row.onDay.isAfter(asOf))
                    .toList();
            this.seen = looks.list(organisation, animal.id()).stream()
                    .filter(look -> !look.localDate().isAfter(asOf))
                    .toList();
            this.answers = recommendations.listAnswers(organisation, animal.id());
            // Where no vet has answered, the last look says all.
            this.course = answers.isEmpty()
                    ? Optional.empty()
                    : Optional.of(recommendations.read(organisation, zone, animal.id()));
            this.answered = course.map(its -> its.on(asOf));
            this.stage = Stage.find(animal.lifeStage().code()).orElse(Stage.UNKNOWN);
        }

        FollowUp read() {
            @Nullable PlacementRow last = moves.isEmpty() ? null : moves.get(moves.size() - 1);
            if (last == null) {
                return without(FollowUp.Where.NOT_PLACED);
            }
            if (last.roomId == null) {
                return without(
                        Because.RELEASED.code().equals(last.because) ? FollowUp.Where.RESIDENT : FollowUp.Where.GONE);
            }
            RoomRow room = rooms.findById(new RowKey(organisation, last.roomId)).orElseThrow();
            RoomBook book = books.open(organisation, room.id(), asOf);
            ClockReading reading = book.read(asOf);
            Isolation isolation = isolationOn(asOf, book, reading);
            Set<Route> routes = routes();
            FollowUp.Place place = new FollowUp.Place(room.id(), room.name());
            if (room.isOfResidents()) {
                return new FollowUp(
                        animal.id(),
                        asOf,
                        FollowUp.Where.RESIDENT,
                        Optional.of(place),
                        Optional.of(reading),
                        Ask.list(policy, book, reading),
                        isolation,
                        routes,
                        urgency(),
                        answered,
                        residentsPlace(routes, waits(reading)),
                        stage,
                        Optional.empty(),
                        Optional.empty(),
                        visits());
            }
            List<Stay> chain = chain();
            WorkPlace workPlace = policy.workPlaces().of(urgency(), routes, waits(reading));
            MinimumStay stay = placedEvent(book, chain.get(chain.size() - 1))
                    .map(books::readStay)
                    .orElseGet(() -> stays.needs(organisation, animal, lastLook(asOf)));
            QuarantinePlan.Newcomer newcomer = new QuarantinePlan.Newcomer(stage, isolation, routes, workPlace, stay);
            List<TaskProgress.Span> spans = spans(chain, newcomer);
            if (spans.isEmpty()) {
                throw new IllegalStateException("no clock for " + animal.id() + ", which stands in " + room.id());
            }
            TaskProgress.Span now = spans.get(spans.size() - 1);
            return new FollowUp(
                    animal.id(),
                    asOf,
                    FollowUp.Where.IN_QUARANTINE,
                    Optional.of(place),
                    Optional.of(reading),
                    Ask.list(policy, book, reading),
                    isolation,
                    routes,
                    urgency(),
                    answered,
                    workPlace,
                    stage,
                    Optional.of(chain.get(0).placement()),
                    Optional.of(QuarantinePlan.make(policy, newcomer, now.start(), now.earliestRelease())),
                    Stream.concat(TaskProgress.list(policy, spans, records(), asOf).stream(), visits().stream())
                            .sorted(Comparator.comparing(each -> each.task().due()))
                            .toList());
        }

        private FollowUp without(FollowUp.Where where) {
            Set<Route> routes = routes();
            WorkPlace workPlace = where == FollowUp.Where.NOT_PLACED
                    ? policy.workPlaces().of(urgency(), routes, false)
                    : residentsPlace(routes, false);
            return new FollowUp(
                    animal.id(),
                    asOf,
                    where,
                    Optional.empty(),
                    Optional.empty(),
                    List.of(),
                    isolationSaid(asOf),
                    routes,
                    urgency(),
                    answered,
                    workPlace,
                    stage,
                    Optional.empty(),
                    Optional.empty(),
                    where == FollowUp.Where.GONE ? List.of() : visits());
        }

        private List<FollowedTask> visits() {
            return VetVisits.list(policy, answers, zone, asOf);
        }

        /** Among the residents, unless something speaks against it; that nobody looked does not. */
        private WorkPlace residentsPlace(Set<Route> routes, boolean roomWaits) {
            WorkPlace place = policy.workPlaces().of(urgency().or(() -> Optional.of("")), routes, roomWaits);
            return place == WorkPlace.NEWCOMERS_WITHOUT_SIGNS ? WorkPlace.RESIDENTS : place;
        }

        private Optional<String> urgency() {
            return answered.isPresent()
                    ? answered.get().urgency()
                    : lastLook(asOf).stream().map(KeptLook::urgency).findFirst();
        }

        private Set<Route> routes() {
            return answered.map(Recommendation::routes)
                    .map(StayRules::routesOf)
                    .orElseGet(() -> StayRules.routes(lastLook(asOf)));
        }

        /** By the last look and what vets answered. */
        private Isolation isolationSaid(LocalDate day) {
            return course.flatMap(its -> Isolation.find(its.on(day).isolation()))
                    .orElseGet(() -> StayRules.isolation(lastLook(day)));
        }

        private List<KeptLook> lastLook(LocalDate day) {
            return LookOccurrences.lastUpTo(seen, day).stream().toList();
        }

        private static boolean waits(ClockReading reading) {
            return !ClockView.waitingFor(reading).isEmpty();
        }

        /**
         * Strict by the last look or a vet's answer, or while a vet has still to speak about something contagious of this
         * animal; but not about what a vet had seen who said how strictly.
         */
        private Isolation isolationOn(LocalDate day, RoomBook book, ClockReading reading) {
            Optional<Instant> said = course.flatMap(its -> its.on(day).standing())
                    .filter(answer -> answer.isolation().isPresent())
                    .map(VetAnswer::seenUpTo);
            boolean open = Stream.concat(ClockView.waitingFor(reading).stream(), reading.openQuestions().stream())
                    .flatMap(event -> book.find(event).stream())
                    .filter(event -> said.map(event.recordedAt::isAfter).orElse(true))
                    .anyMatch(event -> animal.id().equals(event.animalId)
                            && policy.getCause(Objects.requireNonNull(event.cause))
                                    .contagious());
            return open ? Isolation.STRICT : isolationSaid(day);
        }

        /** The stays of this quarantine: those in rooms for quarantine, one after the other, up to now. */
        private List<Stay> chain() {
            List<Stay> chain = new ArrayList<>();
            int from = moves.size();
            while (from > 0 && isQuarantine(moves.get(from - 1))) {
                from--;
            }
            chain.addAll(Stay.list(moves.subList(from, moves.size())));
            return chain;
        }

        private boolean isQuarantine(PlacementRow row) {
            return row.roomId != null
                    && rooms.findById(new RowKey(organisation, row.roomId))
                            .filter(room -> !room.isOfResidents())
                            .isPresent();
        }

        /** The plans that held, one after the other: a new one where the clock began again or the isolation changed. */
        private List<TaskProgress.Span> spans(List<Stay> chain, QuarantinePlan.Newcomer newcomer) {
            List<TaskProgress.Span> spans = new ArrayList<>();
            for (int i = 0; i < chain.size(); i++) {
                Stay stay = chain.get(i);
                boolean lastStay = i + 1 == chain.size();
                LocalDate end = lastStay ? asOf : stay.until().orElse(asOf).minusDays(1);
                if (end.isBefore(stay.from())) {
                    continue;
                }
                RoomBook book = books.open(organisation, stay.room(), end);
                TreeSet<LocalDate> days = new TreeSet<>();
                days.add(stay.from());
                days.add(end);
                book.read(end).history().forEach(step -> days.add(step.event().on()));
                seen.forEach(look -> days.add(look.localDate()));
                for (LocalDate day : days.subSet(stay.from(), true, end, true)) {
                    ClockReading reading = book.read(day);
                    Isolation isolation = isolationOn(day, book, reading);
                    Optional<LocalDate> lookOn = lookOn(day, chain.get(0).from(), book, reading);
                    reading.standing()
                            .fold(
                                    empty -> Optional.<TaskProgress.Span>empty(),
                                    running -> Optional.of(span(
                                            day,
                                            running.start(),
                                            running.earliestRelease(),
                                            true,
                                            lookOn,
                                            isolation,
                                            newcomer)),
                                    held -> Optional.of(span(
                                            day,
                                            held.start(),
                                            held.withoutWaiting(),
                                            false,
                                            lookOn,
                                            isolation,
                                            newcomer)))
                            .ifPresent(spans::add);
                }
            }
            return spans;
        }

        private TaskProgress.Span span(
                LocalDate day,
                LocalDate start,
                LocalDate release,
                boolean dated,
                Optional<LocalDate> lookOn,
                Isolation isolation,
                QuarantinePlan.Newcomer newcomer) {
            return new TaskProgress.Span(
                    day,
                    start,
                    release,
                    dated,
                    lookOn,
                    new QuarantinePlan.Newcomer(
                            stage, isolation, newcomer.contagion(), newcomer.workPlace(), newcomer.stay()));
        }

        /** The day after it came at the earliest: what was looked at on the day it came was looked at before. */
        private Optional<LocalDate> lookOn(LocalDate day, LocalDate came, RoomBook book, ClockReading reading) {
            if (isSettledByAVet(day, book, reading)) {
                return Optional.empty();
            }
            return NextLook.find(
                            policy.lookAgain(),
                            seen.stream()
                                    .filter(look -> !look.localDate().isAfter(day))
                                    .toList(),
                            waitsSince(book, reading))
                    .map(wanted -> wanted.isAfter(came) ? wanted : came.plusDays(1));
        }

        /** Whether a vet has seen all that calls for another look the next morning, and said that it can wait. */
        private boolean isSettledByAVet(LocalDate day, RoomBook book, ClockReading reading) {
            return course.map(its -> its.on(day))
                    .filter(then -> !then.callVet()
                            && then.isolation().equals(Isolation.STANDARD.code())
                            && then.urgency()
                                    .filter(policy.lookAgain().afterUrgency()::contains)
                                    .isEmpty())
                    .flatMap(Recommendation::standing)
                    .filter(answer -> answer.urgency().isPresent())
                    .filter(answer -> beginningsOfWaiting(reading).stream()
                            .flatMap(step -> book.find(step.event().id()).stream())
                            .noneMatch(row -> row.recordedAt.isAfter(answer.seenUpTo())))
                    .isPresent();
        }

        /** The days on which the clock began to wait for something of this animal that no look at it says. */
        private List<LocalDate> waitsSince(RoomBook book, ClockReading reading) {
            return beginningsOfWaiting(reading).stream()
                    .filter(step -> book.find(step.event().id())
                            .filter(row -> row.isFrom(EventSource.Kind.ASSESSMENT))
                            .isEmpty())
                    .map(step -> step.event().on())
                    .toList();
        }

        private List<ClockReading.Step> beginningsOfWaiting(ClockReading reading) {
            return reading.history().stream()
                    .filter(step -> step.did() == ClockReading.Did.PAUSED || step.did() == ClockReading.Did.HELD)
                    .filter(step -> step.event() instanceof ClockEvent.Occurred what
                            && what.animal().map(animal.id()::equals).orElse(true))
                    .toList();
        }

        private Optional<ClockEventRow> placedEvent(RoomBook book, Stay stay) {
            return book.findPlaced(animal.id(), stay.placement());
        }

        private Map<TaskKind, List<LocalDate>> records() {
            Map<TaskKind, List<LocalDate>> records = new EnumMap<>(TaskKind.class);
            records.put(TaskKind.WEIGHING, weighings.listDates(organisation, zone, animal.id()));
            records.put(TaskKind.RE_LOOK, seen.stream().map(KeptLook::localDate).toList());
            records.put(TaskKind.FULL_CLEAN, diary.listDatesOfFullClean(organisation, animal.id()));
            records.put(
                    TaskKind.MITE_CHECK,
                    Stream.concat(
                                    seen.stream()
                                            .filter(look ->
                                                    MITES_AND_TICKS.stream().allMatch(look::answered))
                                            .map(KeptLook::localDate),
                                    diary.listMiteChecks(organisation, animal.id()).stream()
                                            .map(Diary.MitesLookedFor::on))
                            .toList());
            records.put(
                    TaskKind.FAECAL_SAMPLE,
                    samples.list(organisation, animal.id()).stream()
                            .filter(sample ->
                                    sample.kind().equals(STOOL) && sample.outcome() != KeptSample.Outcome.UNUSABLE)
                            .map(KeptSample::takenOn)
                            .toList());
            return records;
        }
    }
}
