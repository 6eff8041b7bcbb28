package varanid.intake.quarantine;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/**
 * What speaks for and against ending one animal's quarantine. It decides nothing: a named person does.
 *
 * @param asOf the local day it was made
 * @param conditions each once
 */
public record ReleaseReview(LocalDate asOf, List<ReleaseCondition> conditions) {

    /** Stands beside every review. */
    public static final String CAUTION =
            "Conditions met are no statement that the animal is free of infection. A person decides.";

    /** How the evidence begins that a vet is against it. */
    static final String OBJECTS = "a vet objects";

    public ReleaseReview {
        conditions = List.copyOf(conditions);
    }

    /** Those that are not met, unknown ones included. */
    public List<ReleaseCondition> open() {
        return conditions.stream()
                .filter(condition -> !(condition instanceof ReleaseCondition.Met))
                .toList();
    }

    /** Goes through every condition of the policy. */
    public static ReleaseReview of(QuarantinePolicy policy, ReleaseFacts facts) {
        List<ReleaseCondition> conditions = new ArrayList<>();
        conditions.add(minimumStay(facts));
        conditions.add(vetsWord(facts));
        conditions.add(stool(policy.faecal(), facts));
        conditions.add(miteFree(policy.miteFree(), facts));
        conditions.add(lastLook(policy.lastLook(), facts));
        conditions.add(weight(facts));
        conditions.add(treatment(facts));
        if (facts.clock().vetRelease() || facts.vetObjection().isPresent()) {
            conditions.add(approval(facts));
        }
        facts.answers().map(ReleaseReview::nothingNew).ifPresent(conditions::add);
        if (facts.seized() || facts.legalHold().isPresent()) {
            conditions.add(legalHold(facts));
        }
        return new ReleaseReview(facts.asOf(), conditions);
    }

    private static ReleaseCondition minimumStay(ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.MINIMUM_STAY;
        List<String> evidence = List.of(facts.clock().inWords());
        return facts.clock()
                .standing()
                .fold(
                        empty -> new ReleaseCondition.Unknown(id, evidence, "in which room it stands: place it there"),
                        running -> running.earliestRelease().isAfter(facts.asOf())
                                ? new ReleaseCondition.Unmet(
                                        id, evidence, "the days up to " + Why.words(running.earliestRelease()))
                                : new ReleaseCondition.Met(id, evidence),
                        held -> new ReleaseCondition.Unmet(
                                id, evidence, "what the room waits for: a vet's word, or the end of a treatment"));
    }

    private static ReleaseCondition vetsWord(ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.VETS_WORD;
        List<UUID> open = facts.clock().openQuestions();
        if (open.isEmpty()) {
            return new ReleaseCondition.Met(id, List.of("nothing waits for a vet's word"));
        }
        List<String> evidence = facts.clock().history().stream()
                .filter(step -> open.contains(step.event().id()))
                .map(step -> Why.words(step.event().on()) + ": " + step.because())
                .toList();
        return new ReleaseCondition.Unmet(id, evidence, "a vet's word on each of these");
    }

    /** The last so many samples since the clock's start: all negative, fresh, and far enough apart. */
    private static ReleaseCondition stool(QuarantinePolicy.Faecal rule, ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.STOOL_NEGATIVE;
        Optional<LocalDate> start = facts.clock().start();
        List<ReleaseFacts.StoolSample> counted = facts.samples().stream()
                .filter(sample -> sample.result() != ReleaseFacts.Result.UNUSABLE)
                .filter(sample -> start.isEmpty() || !sample.takenOn().isBefore(start.get()))
                .sorted(Comparator.comparing(ReleaseFacts.StoolSample::takenOn))
                .toList();
        List<String> evidence = counted.stream()
                .map(sample -> Why.words(sample.takenOn()) + ": "
                        + sample.result().name().toLowerCase(Locale.ROOT)
                        + sample.freshHours()
                                .map(hours -> ", " + hours + " h old")
                                .orElse(", age not written down"))
                .toList();
        List<ReleaseFacts.StoolSample> known = counted.stream()
                .filter(sample -> sample.result() != ReleaseFacts.Result.PENDING)
                .toList();
        boolean pending = known.size() < counted.size();
        if (!known.isEmpty() && known.get(known.size() - 1).result() == ReleaseFacts.Result.POSITIVE) {
            return new ReleaseCondition.Unmet(
                    id,
                    evidence,
                    rule.lastNegatives() + " negative samples after the positive one, " + rule.apartDays()
                            + " days or more apart, each less than " + rule.freshHours() + " hours old");
        }
        String wanted = "the last " + rule.lastNegatives() + " samples since the start negative, " + rule.apartDays()
                + " days or more apart, each less than " + rule.freshHours() + " hours old";
        List<ReleaseFacts.StoolSample> negatives = negativesAtTheEnd(known);
        List<ReleaseFacts.StoolSample> fresh = negatives.stream()
                .filter(sample -> sample.freshHours().orElse(0) < rule.freshHours())
                .toList();
        if (apart(rule, fresh) < rule.lastNegatives()) {
            return pending
                    ? new ReleaseCondition.Unknown(id, evidence, "the result that is still to come; " + wanted)
                    : new ReleaseCondition.Unmet(id, evidence, wanted);
        }
        if (pending) {
            return new ReleaseCondition.Unknown(id, evidence, "the result that is still to come");
        }
        List<ReleaseFacts.StoolSample> surelyFresh =
                fresh.stream().filter(sample -> sample.freshHours().isPresent()).toList();
        return apart(rule, surelyFresh) < rule.lastNegatives()
                ? new ReleaseCondition.Unknown(id, evidence, "how old the samples were; " + wanted)
                : new ReleaseCondition.Met(id, evidence);
    }

    private static List<ReleaseFacts.StoolSample> negativesAtTheEnd(List<ReleaseFacts.StoolSample> known) {
        int from = known.size();
        while (from > 0 && known.get(from - 1).result() == ReleaseFacts.Result.NEGATIVE) {
            from--;
        }
        return known.subList(from, known.size());
    }

    /** How many of these, in order of their days, lie far enough from each other. */
    private static int apart(QuarantinePolicy.Faecal rule, List<ReleaseFacts.StoolSample> samples) {
        int number = 0;
        LocalDate before = LocalDate.MIN;
        for (ReleaseFacts.StoolSample sample : samples) {
            if (number == 0 || ChronoUnit.DAYS.between(before, sample.takenOn()) >= rule.apartDays()) {
                number++;
                before = sample.takenOn();
            }
        }
        return number;
    }

    private static ReleaseCondition miteFree(QuarantinePolicy.MiteFree rule, ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.MITE_FREE;
        Optional<LocalDate> seen = facts.miteLooks().stream()
                .filter(ReleaseFacts.MiteLook::seen)
                .map(ReleaseFacts.MiteLook::on)
                .max(Comparator.naturalOrder());
        Optional<LocalDate> looked =
                facts.miteLooks().stream().map(ReleaseFacts.MiteLook::on).max(Comparator.naturalOrder());
        List<String> evidence = new ArrayList<>();
        seen.ifPresent(on -> evidence.add("mites last seen on " + Why.words(on)));
        looked.ifPresent(on -> evidence.add("last looked for on " + Why.words(on)));
        if (seen.isPresent() && seen.get().plusDays(rule.days()).isAfter(facts.asOf())) {
            return new ReleaseCondition.Unmet(
                    id, evidence, "no mites found up to " + Why.words(seen.get().plusDays(rule.days())));
        }
        if (looked.isEmpty() || looked.get().plusDays(rule.lookedWithinDays()).isBefore(facts.asOf())) {
            return new ReleaseCondition.Unknown(
                    id, evidence, "look for mites now: the last " + rule.lookedWithinDays() + " days count");
        }
        return new ReleaseCondition.Met(id, evidence);
    }

    private static ReleaseCondition lastLook(QuarantinePolicy.LastLook rule, ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.LAST_LOOK;
        if (facts.lastLook().isEmpty()) {
            return new ReleaseCondition.Unknown(id, List.of(), "answer the checklist");
        }
        ReleaseFacts.Look look = facts.lastLook().get();
        List<String> evidence = new ArrayList<>();
        evidence.add("last look on " + Why.words(look.on()));
        look.signs().forEach(sign -> evidence.add("sign: " + sign));
        look.unseen().forEach(unseen -> evidence.add("not seen: " + unseen));
        if (!look.signs().isEmpty()) {
            return new ReleaseCondition.Unmet(id, evidence, "a look without these signs, or a vet's word on them");
        }
        if (look.on().plusDays(rule.withinDays()).isBefore(facts.asOf())) {
            return new ReleaseCondition.Unknown(
                    id, evidence, "answer the checklist again: the last " + rule.withinDays() + " days count");
        }
        return look.unseen().isEmpty()
                ? new ReleaseCondition.Met(id, evidence)
                : new ReleaseCondition.Unknown(id, evidence, "look at what was not seen");
    }

    private static ReleaseCondition weight(ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.WEIGHT;
        return switch (facts.weight()) {
            case NOT_FALLING -> new ReleaseCondition.Met(id, List.of("its weight is not falling"));
            case NOT_GAINING ->
                new ReleaseCondition.Unmet(id, List.of("it is growing, and has not gained"), "a gain, or a vet's word");
            case FALLING ->
                new ReleaseCondition.Unmet(id, List.of("its weight is falling"), "weight that holds, or a vet's word");
            case CANNOT_TELL ->
                new ReleaseCondition.Unknown(
                        id, List.of("the weighings cannot tell"), "weigh again, with finer scales where need be");
        };
    }

    private static ReleaseCondition treatment(ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.TREATMENT_ENDED;
        return facts.treatmentOpen()
                .<ReleaseCondition>map(what -> new ReleaseCondition.Unmet(
                        id, List.of("a treatment goes on: " + what), "its end, as the vet sets it"))
                .orElseGet(() -> new ReleaseCondition.Met(id, List.of("no treatment is recorded as going on")));
    }

    private static ReleaseCondition approval(ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.VET_APPROVAL;
        if (facts.vetObjection().isPresent()) {
            ReleaseFacts.Approval objection = facts.vetObjection().get();
            return new ReleaseCondition.Unmet(
                    id,
                    List.of(OBJECTS + ": " + objection.by() + " on " + Why.words(objection.on())),
                    "a vet's approval after that");
        }
        // What was approved before a restart was another state of things.
        return facts.vetApproval()
                .filter(approval -> facts.clock()
                        .start()
                        .map(start -> !approval.on().isBefore(start))
                        .orElse(true))
                .<ReleaseCondition>map(approval -> new ReleaseCondition.Met(
                        id, List.of("approved by " + approval.by() + " on " + Why.words(approval.on()))))
                .orElseGet(() -> new ReleaseCondition.Unmet(
                        id,
                        List.of("the policy asks for a vet's approval here"),
                        "a vet's approval, recorded since the days began"));
    }

    /** What the vet who answered had not seen is seen by a vet before a release. */
    private static ReleaseCondition nothingNew(ReleaseFacts.Answers answers) {
        ReleaseCondition.Id id = ReleaseCondition.Id.NOTHING_NEW_SINCE_VET;
        List<String> evidence = new ArrayList<>();
        answers.standing().ifPresent(evidence::add);
        answers.newSince().forEach(sign -> evidence.add("new since then: " + sign));
        answers.unconfirmed().forEach(answer -> evidence.add("not confirmed: " + answer));
        if (!answers.newSince().isEmpty()) {
            return new ReleaseCondition.Unmet(id, evidence, "a vet's answer after that: call");
        }
        return answers.unconfirmed().isEmpty()
                ? new ReleaseCondition.Met(id, evidence)
                : new ReleaseCondition.Unknown(
                        id, evidence, "whether a vet wrote it: a clinician confirms it, or a vet answers");
    }

    private static ReleaseCondition legalHold(ReleaseFacts facts) {
        ReleaseCondition.Id id = ReleaseCondition.Id.NO_LEGAL_HOLD;
        if (facts.legalHold().isEmpty()) {
            return new ReleaseCondition.Unknown(
                    id, List.of("seized animals are evidence"), "whether the authority has released it");
        }
        return facts.legalHold().get()
                ? new ReleaseCondition.Unmet(id, List.of("an authority holds it"), "the authority's release")
                : new ReleaseCondition.Met(id, List.of("no authority holds it"));
    }
}
