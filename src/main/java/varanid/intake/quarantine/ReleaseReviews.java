package varanid.intake.quarantine;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;
import varanid.intake.account.PeopleNames;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.KeptLook;
import varanid.intake.assessment.Looks;
import varanid.intake.diary.Diary;
import varanid.intake.platform.id.RowKey;
import varanid.intake.sample.KeptSample;
import varanid.intake.sample.Samples;
import varanid.intake.vet.Recommendation;
import varanid.intake.vet.Recommendations;
import varanid.intake.vet.VetAnswer;
import varanid.intake.weight.Judged;
import varanid.intake.weight.WeightTrend;
import varanid.intake.weight.WeightTrends;

/** Gathers what is known of an animal when somebody asks whether its quarantine could end. */
@Component
class ReleaseReviews {

    private static final String MITES = "mites";

    private final Whereabouts whereabouts;
    private final Rooms rooms;
    private final RoomBooks books;
    private final ReleaseApprovals approvals;
    private final LegalHolds holds;
    private final Looks looks;
    private final Diary diary;
    private final Samples samples;
    private final WeightTrends trends;
    private final Recommendations recommendations;
    private final PeopleNames people;
    private final QuarantinePolicy policy;

    ReleaseReviews(
            Whereabouts whereabouts,
            Rooms rooms,
            RoomBooks books,
            ReleaseApprovals approvals,
            LegalHolds holds,
            Looks looks,
            Diary diary,
            Samples samples,
            WeightTrends trends,
            Recommendations recommendations,
            PeopleNames people,
            QuarantinePolicy policy) {
        this.whereabouts = whereabouts;
        this.rooms = rooms;
        this.books = books;
        this.approvals = approvals;
        this.holds = holds;
        this.looks = looks;
        this.diary = diary;
        this.samples = samples;
        this.trends = trends;
        this.recommendations = recommendations;
        this.people = people;
        this.policy = policy;
    }

    /** The room for quarantine where it stands on that day. */
    Optional<RoomRow> findRoom(UUID organisation, UUID animal, LocalDate asOf) {
        return whereabouts
                .findLast(organisation, animal, asOf)
                .flatMap(row -> Optional.ofNullable(row.roomId))
                .flatMap(room -> rooms.findById(new RowKey(organisation, room)))
                .filter(room -> !room.isOfResidents());
    }

    ReleaseReview review(UUID organisation, ZoneId zone, Animals.Newcomer animal, LocalDate asOf) {
        Optional<RoomBook> book =
                findRoom(organisation, animal.id(), asOf).map(room -> books.open(organisation, room.id(), asOf));
        ClockReading reading =
                book.map(its -> its.read(asOf)).orElseGet(() -> new QuarantineClock(policy, List.of()).read(asOf));
        Optional<ReleaseApprovalRow> word =
                approvals.listNewestFirst(organisation, animal.id(), asOf, Limit.of(1)).stream()
                        .findFirst();
        return ReleaseReview.of(
                policy,
                new ReleaseFacts(
                        asOf,
                        reading,
                        stool(organisation, animal.id(), asOf),
                        miteLooks(organisation, animal.id(), book, reading, asOf),
                        lastLook(organisation, animal.id(), asOf),
                        weight(organisation, zone, animal.id(), asOf),
                        treatment(book, reading),
                        word.filter(row -> Boolean.TRUE.equals(row.approves)).map(this::said),
                        word.filter(row -> Boolean.FALSE.equals(row.approves)).map(this::said),
                        answers(organisation, zone, animal.id(), asOf),
                        holds.find(organisation, animal.id(), asOf)
                                .map(row -> row.state.equals(LegalHolds.State.HELD.code())),
                        Origins.isSeized(animal)));
    }

    private Optional<ReleaseFacts.Answers> answers(UUID organisation, ZoneId zone, UUID animal, LocalDate asOf) {
        Recommendation holds = recommendations.find(organisation, zone, animal, asOf);
        return holds.standing().isEmpty() && holds.unconfirmed().isEmpty()
                ? Optional.empty()
                : Optional.of(new ReleaseFacts.Answers(
                        holds.standing().map(answer -> inWords(answer, zone)),
                        holds.newSince().stream()
                                .map(Recommendation.NewSince::label)
                                .toList(),
                        holds.unconfirmed().stream()
                                .map(answer -> inWords(answer, zone))
                                .toList()));
    }

    private static String inWords(VetAnswer answer, ZoneId zone) {
        List<String> said = new ArrayList<>();
        answer.urgency().ifPresent(urgency -> said.add("urgency " + urgency));
        answer.isolation().ifPresent(isolation -> said.add("isolation " + isolation));
        answer.quarantineUntil().ifPresent(until -> said.add("not released before " + Why.words(until)));
        answer.approvesRelease()
                .ifPresent(approves -> said.add(approves ? "approves the release" : "objects to the release"));
        return answer.writer().name() + ", " + answer.writer().practice() + ", answered on "
                + Why.words(LocalDate.ofInstant(answer.answeredAt(), zone))
                + (said.isEmpty() ? "" : ": " + String.join(", ", said));
    }

    private ReleaseFacts.Approval said(ReleaseApprovalRow row) {
        return new ReleaseFacts.Approval(
                Optional.ofNullable(row.answeredBy)
                        .or(() -> Optional.ofNullable(row.recordedBy)
                                .flatMap(person -> people.find(row.key.organisationId(), person)))
                        .orElse("a vet"),
                row.onDay);
    }

    private List<ReleaseFacts.StoolSample> stool(UUID organisation, UUID animal, LocalDate asOf) {
        return samples.list(organisation, animal).stream()
                .filter(sample -> sample.kind().equals(FollowUps.STOOL)
                        && !sample.takenOn().isAfter(asOf))
                .map(sample ->
                        new ReleaseFacts.StoolSample(sample.takenOn(), sample.freshHours(), result(sample.outcome())))
                .toList();
    }

    private static ReleaseFacts.Result result(KeptSample.Outcome outcome) {
        return switch (outcome) {
            case NEGATIVE -> ReleaseFacts.Result.NEGATIVE;
            case POSITIVE -> ReleaseFacts.Result.POSITIVE;
            case PENDING -> ReleaseFacts.Result.PENDING;
            case UNUSABLE -> ReleaseFacts.Result.UNUSABLE;
        };
    }

    /** Looks at this animal and at those that share its room, and what was told of the room itself. */
    private List<ReleaseFacts.MiteLook> miteLooks(
            UUID organisation, UUID animal, Optional<RoomBook> book, ClockReading reading, LocalDate asOf) {
        List<ReleaseFacts.MiteLook> all = new ArrayList<>();
        Set<UUID> there = reading.animals().stream().collect(Collectors.toSet());
        there.add(animal);
        for (UUID each : there) {
            for (KeptLook look : looks.list(organisation, each)) {
                boolean seen = look.findSign(MITES).isPresent();
                if (seen || look.answered(MITES)) {
                    all.add(new ReleaseFacts.MiteLook(look.localDate(), seen));
                }
            }
            diary.listMiteChecks(organisation, each)
                    .forEach(check -> all.add(new ReleaseFacts.MiteLook(check.on(), check.seen())));
        }
        for (ClockReading.Step step : reading.history()) {
            boolean seen = step.event() instanceof ClockEvent.Occurred what
                    && what.cause().equals(MITES)
                    && step.did() != ClockReading.Did.NOTHING;
            if (seen && book.isPresent()) {
                all.add(new ReleaseFacts.MiteLook(step.event().on(), true));
            }
        }
        return all.stream().filter(look -> !look.on().isAfter(asOf)).toList();
    }

    private Optional<ReleaseFacts.Look> lastLook(UUID organisation, UUID animal, LocalDate asOf) {
        return looks.findLatest(organisation, animal, asOf)
                .map(look -> new ReleaseFacts.Look(
                        look.localDate(),
                        look.signs().stream()
                                .filter(KeptLook.Sign::counts)
                                .map(KeptLook.Sign::told)
                                .toList(),
                        look.unseenMustSee()));
    }

    /** Asserted only where the whole interval says so; nobody knows from a weighing that is old. */
    private ReleaseFacts.Weight weight(UUID organisation, ZoneId zone, UUID animal, LocalDate asOf) {
        Optional<WeightTrend> found = trends.find(organisation, zone, animal, asOf);
        if (found.isEmpty()) {
            return ReleaseFacts.Weight.CANNOT_TELL;
        }
        WeightTrend trend = found.get();
        List<Judged> past = trend.thresholds().stream()
                .filter(Judged.Past.class::isInstance)
                .toList();
        boolean falls = trend.slope()
                .flatMap(slope -> slope.interval())
                .filter(interval -> interval.highestWithRounding() < 0)
                .isPresent();
        if (falls
                || past.stream()
                        .anyMatch(each -> each.threshold().atMostPercent().signum() < 0)) {
            return ReleaseFacts.Weight.FALLING;
        }
        if (!past.isEmpty()) {
            return ReleaseFacts.Weight.NOT_GAINING;
        }
        boolean lately = !trend.latest()
                .day()
                .plusDays(policy.lastWeighing().withinDays())
                .isBefore(asOf);
        boolean sure = trend.thresholds().stream().allMatch(Judged.NotPast.class::isInstance);
        return lately && sure ? ReleaseFacts.Weight.NOT_FALLING : ReleaseFacts.Weight.CANNOT_TELL;
    }

    private Optional<String> treatment(Optional<RoomBook> book, ClockReading reading) {
        List<String> open = reading.why().stream()
                .filter(why -> why instanceof Why.Waits waits && waits.forTreatment())
                .flatMap(why -> book.flatMap(its -> its.find(why.event())).stream())
                .map(event ->
                        policy.getCause(Objects.requireNonNull(event.cause)).label())
                .distinct()
                .toList();
        return open.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", open));
    }
}
