package varanid.intake.quarantine;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import varanid.intake.account.Zones;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.id.RowKey;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Faults;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.vet.Recommendations;
import varanid.intake.vet.VetAnswer;
import varanid.intake.vet.VetAnswered;

/**
 * Brings what a vet answered to the clock of the room and to what is said of release. Listens within the transaction that
 * keeps or confirms the answer, the organisation's lock being held.
 *
 * <p>A ruling answers every open ask of that animal with its cause that was recorded up to the moment the vet had seen.
 * An answer that is not confirmed only raises: it lets days begin again, makes them more, and objects to a release. The
 * rest is written once it is confirmed, of the day it was given. An answer that takes the place of another makes all that
 * followed from that count for nothing, once it is confirmed.
 */
@Component
class VetFollower {

    private static final Set<VetAnswer.Ruling> RAISING =
            Set.of(VetAnswer.Ruling.RESTARTS, VetAnswer.Ruling.RESTARTS_AFTER_TREATMENT);

    private final ClockEvents events;
    private final ReleaseApprovals approvals;
    private final Whereabouts whereabouts;
    private final Rooms rooms;
    private final RoomBooks books;
    private final EventWriter writer;
    private final Recommendations recommendations;
    private final Zones zones;
    private final QuarantinePolicy policy;
    private final Ids ids;
    private final Clock clock;

    VetFollower(
            ClockEvents events,
            ReleaseApprovals approvals,
            Whereabouts whereabouts,
            Rooms rooms,
            RoomBooks books,
            EventWriter writer,
            Recommendations recommendations,
            Zones zones,
            QuarantinePolicy policy,
            Ids ids,
            Clock clock) {
        this.events = events;
        this.approvals = approvals;
        this.whereabouts = whereabouts;
        this.rooms = rooms;
        this.books = books;
        this.writer = writer;
        this.recommendations = recommendations;
        this.zones = zones;
        this.policy = policy;
        this.ids = ids;
        this.clock = clock;
    }

    /** @throws ProblemException 422 where it rules on what the policy does not know */
    @EventListener
    void answered(VetAnswered answered) {
        ZoneId zone = zones.get(answered.organisationId());
        List<VetAnswer> answers = recommendations.listAnswers(answered.organisationId(), answered.animalId());
        VetAnswer answer = find(answers, answered.answerId()).orElseThrow();
        check(answer);
        if (answers.stream()
                .noneMatch(each -> each.confirmed()
                        && each.supersedes().filter(answer.id()::equals).isPresent())) {
            new One(answered.organisationId(), zone, answers, answer).follow();
        }
    }

    private static Optional<VetAnswer> find(List<VetAnswer> answers, UUID id) {
        return answers.stream().filter(each -> each.id().equals(id)).findFirst();
    }

    private void check(VetAnswer answer) {
        Faults faults = new Faults();
        for (int i = 0; i < answer.rulings().size(); i++) {
            String cause = answer.rulings().get(i).cause();
            if (cause.equals(QuarantinePolicy.NEW_ANIMAL)
                    || policy.findCause(cause).isEmpty()) {
                faults.add(Fault.at(
                        "#/rulings/" + i + "/cause",
                        "is no cause that a vet rules on",
                        "one of: "
                                + String.join(
                                        ", ",
                                        policy.causes().stream()
                                                .map(QuarantinePolicy.Cause::id)
                                                .filter(id -> !id.equals(QuarantinePolicy.NEW_ANIMAL))
                                                .toList())));
            }
        }
        faults.orThrow();
    }

    /** What follows from one answer. */
    private final class One {

        private final UUID organisation;
        private final VetAnswer answer;
        private final UUID animal;
        private final List<UUID> replaced;
        private final EventWriter.By by;
        private final LocalDate answeredOn;
        private final LocalDate today;
        private final Set<UUID> touched = new HashSet<>();

        One(UUID organisation, ZoneId zone, List<VetAnswer> answers, VetAnswer answer) {
            this.organisation = organisation;
            this.answer = answer;
            this.animal = answer.animalId();
            this.replaced = answer.confirmed() ? replacedBy(answers, answer) : List.of();
            this.by = new EventWriter.By(organisation, answer.recordedBy().orElse(null), clock.instant());
            this.today = LocalDate.ofInstant(clock.instant(), zone);
            LocalDate on = LocalDate.ofInstant(answer.answeredAt(), zone);
            this.answeredOn = on.isAfter(today) ? today : on;
        }

        private static List<UUID> replacedBy(List<VetAnswer> answers, VetAnswer answer) {
            List<UUID> replaced = new ArrayList<>();
            Optional<UUID> before = answer.supersedes();
            while (before.isPresent()) {
                replaced.add(before.get());
                before = find(answers, before.get()).flatMap(VetAnswer::supersedes);
            }
            return replaced;
        }

        void follow() {
            if (answer.confirmed()) {
                withdraw(List.of(answer.id()), "the answer is confirmed now");
                withdraw(replaced, "a later answer of a vet takes its place");
            }
            answer.rulings().forEach(this::rule);
            answer.quarantineUntil().ifPresent(this::keepUntil);
            speakOfRelease();
            announce();
        }

        private void withdraw(List<UUID> answers, String reason) {
            if (!answers.isEmpty()) {
                for (ClockEventRow event : events.listStandingOfAnswers(organisation, answers)) {
                    writer.withdraw(by, event, reason);
                    touched.add(event.roomId);
                }
            }
        }

        private void rule(VetAnswer.CauseRuling ruling) {
            if (!answer.confirmed() && !RAISING.contains(ruling.ruling())) {
                return;
            }
            for (UUID room : events.listRoomsOfOccurrences(organisation, animal)) {
                RoomBook book = books.open(organisation, room, today);
                for (Ask ask : Ask.list(policy, book, book.read(today))) {
                    ClockEventRow asked = book.find(ask.event()).orElseThrow();
                    if (animal.equals(asked.animalId)
                            && ruling.cause().equals(asked.cause)
                            && !asked.recordedAt.isAfter(answer.seenUpTo())) {
                        save(spoke(ruling, asked));
                    }
                }
            }
        }

        private ClockEventRow spoke(VetAnswer.CauseRuling ruling, ClockEventRow asked) {
            ClockEventRow row = event(
                    asked.roomId,
                    answeredOn.isBefore(asked.onDay) ? asked.onDay : answeredOn,
                    EventKind.VET_SPOKE,
                    Optional.of(ruling.cause()));
            row.about = asked.id();
            row.ruling = ruling.ruling().code();
            return row;
        }

        /** Earlier than the clock shows only for this animal, and only as far as the vet had seen what the room knows. */
        private void keepUntil(LocalDate until) {
            Optional<PlacementRow> place = whereabouts.findLast(organisation, animal);
            Optional<RoomRow> room = place.flatMap(last -> Optional.ofNullable(last.roomId))
                    .flatMap(id -> rooms.findById(new RowKey(organisation, id)))
                    .filter(its -> !its.isOfResidents());
            if (room.isEmpty()) {
                return;
            }
            LocalDate came = place.orElseThrow().onDay;
            LocalDate on = answeredOn.isBefore(came) ? came : answeredOn;
            RoomBook book = books.open(organisation, room.get().id(), today);
            ClockReading then = book.read(on);
            Optional<LocalDate> start = then.start();
            Optional<LocalDate> earliest = then.standing().earliest();
            if (start.isEmpty() || earliest.isEmpty()) {
                return;
            }
            // What did not count comes on top of what is needed.
            long days = ChronoUnit.DAYS.between(start.get(), until) - then.uncountedDays();
            int needed = (int) Math.max(0, Math.min(MinimumStay.MOST_DAYS, days));
            if (until.isAfter(earliest.get())) {
                save(decided(room.get(), on, EventKind.LENGTHENED, needed, until));
            } else if (until.isBefore(earliest.get())
                    && answer.confirmed()
                    && !book.happenedSince(answer.seenUpTo(), on)) {
                save(decided(room.get(), on, EventKind.VET_DECIDED, needed, until));
            }
        }

        private ClockEventRow decided(RoomRow room, LocalDate on, EventKind kind, int days, LocalDate until) {
            ClockEventRow row = event(room.id(), on, kind, Optional.empty());
            row.days = days;
            row.reason = writer() + " answered: not before " + Why.words(until);
            return row;
        }

        private ClockEventRow event(UUID room, LocalDate on, EventKind kind, Optional<String> part) {
            ClockEventRow row = writer.event(by, room, on, kind)
                    .from(new EventSource(EventSource.Kind.VET_ANSWER, answer.id(), part));
            row.animalId = animal;
            row.unconfirmed = !answer.confirmed();
            row.reason = writer() + " answered";
            return row;
        }

        private void save(ClockEventRow row) {
            writer.save(row);
            touched.add(row.roomId);
        }

        private String writer() {
            return answer.writer().name() + ", " + answer.writer().practice();
        }

        private void speakOfRelease() {
            List<UUID> concerned = new ArrayList<>(replaced);
            concerned.add(answer.id());
            // The last thing that was said by any of them.
            Optional<Boolean> said = approvals.listOfAnswers(organisation, animal, concerned).stream()
                    .reduce((one, next) -> next)
                    .flatMap(row -> Optional.ofNullable(row.approves));
            Optional<Boolean> says = answer.approvesRelease().filter(approves -> answer.confirmed() || !approves);
            boolean takesBack = answer.confirmed() && says.isEmpty() && said.isPresent();
            if (takesBack || says.isPresent() && !says.equals(said)) {
                ReleaseApprovalRow row = new ReleaseApprovalRow(
                        new RowKey(organisation, ids.next()),
                        animal,
                        answeredOn,
                        says.orElse(null),
                        null,
                        by.person(),
                        by.at());
                row.answerId = answer.id();
                row.answeredBy = writer();
                approvals.saveAndFlush(row);
            }
        }

        /** The animal itself is told of by whoever kept the answer. */
        private void announce() {
            Set<UUID> concerned = new HashSet<>();
            touched.forEach(room ->
                    concerned.addAll(books.open(organisation, room, today).animalsOn(today)));
            concerned.remove(animal);
            writer.announce(organisation, concerned);
        }
    }
}
