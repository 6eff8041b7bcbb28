package varanid.intake.vet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import varanid.intake.vet.AnswerRules.Outcome;
import varanid.intake.vet.Recommendation.Computed;
import varanid.intake.vet.Recommendation.NewSince;

/** What held for an animal on one day after another. */
public final class RecommendationCourse {

    private final Words words;
    private final ZoneId zone;
    private final List<LookFacts> looks;
    private final List<VetAnswer> answers;

    RecommendationCourse(Words words, ZoneId zone, List<LookFacts> looks, List<VetAnswer> answers) {
        this.words = words;
        this.zone = zone;
        this.looks = List.copyOf(looks);
        this.answers = List.copyOf(answers);
    }

    /** What held on a day, by the looks and answers up to and including it. */
    public Recommendation on(LocalDate day) {
        List<VetAnswer> given = answers.stream()
                .filter(answer -> isBy(answer.answeredAt(), day))
                .map(answer -> asConfirmedOn(answer, day))
                .toList();
        return inWords(AnswerRules.decide(looks, given, day));
    }

    private boolean isBy(Instant at, LocalDate day) {
        return !LocalDate.ofInstant(at, zone).isAfter(day);
    }

    /** What was confirmed later was not confirmed then. */
    private VetAnswer asConfirmedOn(VetAnswer it, LocalDate day) {
        // What was confirmed from the start was so when it was given, on whatever day it was kept.
        return it.confirmedBy().isEmpty()
                        || it.confirmedAt().filter(at -> isBy(at, day)).isPresent()
                ? it
                : it.unconfirmed();
    }

    private Recommendation inWords(Outcome it) {
        List<NewSince> news = it.newSince().stream().map(this::inWords).toList();
        Optional<Computed> computed = it.computed()
                .map(look -> new Computed(
                        look.id(),
                        look.kept().occurredAt(),
                        look.urgency(),
                        look.label(),
                        look.headline(),
                        look.kept().isolation().orElse(AnswerRules.STANDARD),
                        look.kept().isolation().isPresent() ? look.kept().isolationRoutes() : Set.of()));
        return new Recommendation(
                computed,
                it.standing(),
                it.unconfirmed(),
                it.urgency(),
                headline(it),
                it.by(),
                it.isolation(),
                it.isolationBy(),
                it.routes(),
                news,
                news.isEmpty() ? Optional.empty() : Optional.of(words.alert(news, zone)),
                !news.isEmpty());
    }

    private NewSince inWords(NewSince it) {
        return it.finding().equals(NewSince.WHOLE_LOOK) ? it.labelled(words.wholeLook(it.level())) : it;
    }

    private String headline(Outcome it) {
        if (it.urgency().isEmpty()) {
            return words.headline("none");
        }
        String urgency = words.urgency(it.urgency().get());
        if (!it.newSince().isEmpty()) {
            return words.headline("new-since", "urgency", urgency);
        }
        Optional<VetAnswer> answer = it.urgencyAnswer().or(it::raisedBy);
        if (answer.isPresent()) {
            return words.headline(
                    answer.get().confirmed() ? "vet" : "vet-unconfirmed",
                    "urgency",
                    urgency,
                    "name",
                    answer.get().writer().name(),
                    "practice",
                    answer.get().writer().practice(),
                    "day",
                    Words.day(answer.get().answeredAt(), zone));
        }
        boolean isOfLastLook = it.computed()
                .filter(look -> look.urgency().equals(it.urgency().get()))
                .isPresent();
        return it.vetSaidHowSoon() || !isOfLastLook
                ? words.headline("raised", "urgency", urgency)
                : it.computed().orElseThrow().headline();
    }
}
