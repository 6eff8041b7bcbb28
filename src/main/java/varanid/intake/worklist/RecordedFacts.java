package varanid.intake.worklist;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import varanid.intake.account.Zones;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.LastLook;
import varanid.intake.assessment.Looks;
import varanid.intake.diary.Demeanour;
import varanid.intake.diary.Diary;
import varanid.intake.diary.DiaryEntry;
import varanid.intake.diary.MiteCheck;
import varanid.intake.quarantine.Ask;
import varanid.intake.quarantine.ClockReading;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.FollowUps;
import varanid.intake.vet.Recommendation;
import varanid.intake.weight.Judged;
import varanid.intake.weight.WeightRules;
import varanid.intake.weight.WeightTrend;
import varanid.intake.weight.WeightTrends;

/**
 * What the work list says of an animal, from everything that is recorded of it: its last look and the one before, its
 * weighings, its diary, its quarantine and the clock of its room.
 */
@Component
class RecordedFacts implements EntrySource {

    private final Animals animals;
    private final Looks looks;
    private final WeightTrends weights;
    private final Diary diary;
    private final FollowUps followUps;
    private final Zones zones;
    private final WorklistTexts texts;
    private final Clock clock;

    RecordedFacts(
            Animals animals,
            Looks looks,
            WeightTrends weights,
            Diary diary,
            FollowUps followUps,
            Zones zones,
            WorklistTexts texts,
            Clock clock) {
        this.animals = animals;
        this.looks = looks;
        this.weights = weights;
        this.diary = diary;
        this.followUps = followUps;
        this.zones = zones;
        this.texts = texts;
        this.clock = clock;
    }

    @Override
    public Optional<WorklistFacts> facts(UUID organisationId, UUID animalId) {
        ZoneId zone = zones.get(organisationId);
        LocalDate today = LocalDate.ofInstant(clock.instant(), zone);
        return followUps
                .find(organisationId, zone, animalId, today)
                .filter(followUp -> followUp.where() != FollowUp.Where.GONE)
                .flatMap(followUp -> animals.find(organisationId, animalId)
                        .map(animal -> facts(organisationId, zone, today, animal, followUp)));
    }

    private WorklistFacts facts(
            UUID organisation, ZoneId zone, LocalDate today, Animals.Newcomer animal, FollowUp followUp) {
        Optional<LastLook> last = looks.findLast(organisation, animal.id());
        List<WeightRules.Threshold> lost = weights.find(organisation, zone, animal.id(), today).stream()
                .flatMap(RecordedFacts::past)
                .toList();
        Optional<Recommendation> answered = followUp.answered();
        Optional<Urgency> byLook = followUp.urgency().flatMap(Urgency::find);
        Optional<Urgency> byWeight = lost.stream()
                .flatMap(threshold -> Urgency.find(threshold.urgency()).stream())
                .min(Comparator.naturalOrder());
        Optional<Urgency> bySign = answered.stream()
                .flatMap(its -> its.newSince().stream())
                .flatMap(sign -> Urgency.find(sign.floor()).stream())
                .min(Comparator.naturalOrder());
        Optional<Urgency> urgency =
                Stream.of(byLook, byWeight, bySign).flatMap(Optional::stream).min(Comparator.naturalOrder());
        Optional<String> headline = urgency.equals(byLook) || urgency.equals(bySign)
                ? answered.map(Recommendation::headline).or(() -> last.map(LastLook::headline))
                : lost.stream().map(WeightRules.Threshold::text).findFirst();
        return new WorklistFacts(
                animal.name(),
                followUp.room().map(room -> new WorklistFacts.Room(room.id(), room.name())),
                urgency,
                headline,
                last.map(look -> !look.newOrWorse().isEmpty()).orElse(false),
                last.filter(look -> look.before().isPresent()).map(LastLook::id),
                reasons(zone, answered, last, lost),
                followUp.stop(),
                openTasks(organisation, zone, animal, followUp, last));
    }

    private static Stream<WeightRules.Threshold> past(WeightTrend trend) {
        return trend.thresholds().stream()
                .flatMap(judged -> judged.fold(
                        (Judged.Past past) -> Stream.of(past.threshold()),
                        not -> Stream.empty(),
                        not -> Stream.empty()));
    }

    /**
     * What a vet is to be called for first, then what a vet answered, new and worse things, and what carries the urgency;
     * each finding once.
     */
    private List<WorklistFacts.Reason> reasons(
            ZoneId zone, Optional<Recommendation> answered, Optional<LastLook> last, List<WeightRules.Threshold> lost) {
        List<WorklistFacts.Reason> reasons = new ArrayList<>();
        answered.ifPresent(its -> {
            its.newSince()
                    .forEach(sign ->
                            reasons.add(new WorklistFacts.Reason(sign.finding(), texts.newSinceAnswer(sign.label()))));
            its.standing()
                    .ifPresent(answer ->
                            reasons.add(new WorklistFacts.Reason("vet-answer", texts.answered(answer, zone))));
            its.unconfirmed().stream()
                    .limit(1)
                    .forEach(answer -> reasons.add(
                            new WorklistFacts.Reason("unconfirmed-answer", texts.unconfirmed(answer, zone))));
        });
        last.ifPresent(look -> {
            look.newOrWorse().stream()
                    .filter(sign ->
                            reasons.stream().noneMatch(reason -> reason.code().equals(sign.code())))
                    .forEach(
                            sign -> reasons.add(new WorklistFacts.Reason(sign.code(), texts.newOrWorse(sign.label()))));
            look.urgentBecause().stream()
                    .filter(sign ->
                            reasons.stream().noneMatch(reason -> reason.code().equals(sign.code())))
                    .forEach(sign -> reasons.add(new WorklistFacts.Reason(
                            sign.code(), sign.sum() ? texts.together(sign.label()) : sign.label())));
        });
        lost.forEach(threshold -> reasons.add(new WorklistFacts.Reason(threshold.id(), threshold.text())));
        return reasons;
    }

    private List<WorklistFacts.OpenTask> openTasks(
            UUID organisation, ZoneId zone, Animals.Newcomer animal, FollowUp followUp, Optional<LastLook> last) {
        List<WorklistFacts.OpenTask> open = new ArrayList<>();
        followUp.notDone()
                .forEach(task -> open.add(new WorklistFacts.OpenTask(
                        task.kind().code(), task.ordinal(), task.title(), task.due(), task.latest())));
        LocalDate came = animal.arrivedOn().orElse(LocalDate.ofInstant(animal.recordedAt(), zone));
        if (followUp.where() == FollowUp.Where.NOT_PLACED) {
            open.add(task("place", 1, "", came));
        }
        if (last.isEmpty()) {
            open.add(task("first-look", 1, "", came));
        }
        diary.list(organisation, animal.id()).stream()
                .filter(entry -> last.map(look -> entry.occurredAt().isAfter(look.occurredAt()))
                        .orElse(true))
                .filter(entry -> sign(entry).isPresent())
                .findFirst()
                .ifPresent(entry ->
                        open.add(task("look-now", 1, texts.lookNow(sign(entry).orElseThrow()), entry.localDate())));
        open.addAll(asked(animal.id(), followUp));
        return open;
    }

    /** What of a diary entry asks for a look. */
    private static Optional<String> sign(DiaryEntry entry) {
        if (entry.miteCheck() == MiteCheck.SEEN) {
            return Optional.of("mites");
        }
        return entry.demeanour()
                .filter(demeanour -> demeanour == Demeanour.DULL)
                .map(dull -> "dull");
    }

    /**
     * What a vet has still to speak about, or whose treatment has to end: at the animal that it is about, or at every
     * one of the room where that is not known or the animal stands there no more.
     */
    private List<WorklistFacts.OpenTask> asked(UUID animal, FollowUp followUp) {
        Set<UUID> there = followUp.clock().map(ClockReading::animals).orElse(Set.of());
        Map<Ask.Wanted, Integer> count = new EnumMap<>(Ask.Wanted.class);
        return followUp.asks().stream()
                .filter(ask ->
                        ask.animal().filter(there::contains).map(animal::equals).orElse(true))
                .map(ask ->
                        task(ask.wanted().code(), count.merge(ask.wanted(), 1, Integer::sum), ask.words(), ask.on()))
                .toList();
    }

    private WorklistFacts.OpenTask task(String kind, int ordinal, String what, LocalDate due) {
        return new WorklistFacts.OpenTask(kind, ordinal, texts.title(kind, what), due, due);
    }
}
