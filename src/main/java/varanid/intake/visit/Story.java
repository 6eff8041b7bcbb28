package varanid.intake.visit;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.platform.web.Markup;
import varanid.intake.quarantine.FollowUps;
import varanid.intake.sample.SampleWords;
import varanid.intake.sample.Samples;
import varanid.intake.vet.Recommendations;
import varanid.intake.vet.VetAnswer;

/** What happened to an animal, one thing after another, in the words of its summary. */
@Service
public class Story {

    private final LatestLook looks;
    private final Records records;
    private final HistoryPart history;
    private final SamplesPart samplesPart;
    private final VetsAnswersPart answersPart;
    private final Samples samples;
    private final Recommendations recommendations;
    private final FollowUps followUps;
    private final Names names;
    private final HandOverTexts texts;

    Story(
            LatestLook looks,
            Records records,
            HistoryPart history,
            SamplesPart samplesPart,
            VetsAnswersPart answersPart,
            Samples samples,
            Recommendations recommendations,
            FollowUps followUps,
            Names names,
            HandOverTexts texts) {
        this.looks = looks;
        this.records = records;
        this.history = history;
        this.samplesPart = samplesPart;
        this.answersPart = answersPart;
        this.samples = samples;
        this.recommendations = recommendations;
        this.followUps = followUps;
        this.names = names;
        this.texts = texts;
    }

    /** What an event is. Those of one day without a moment stand in this order, the first on top. */
    public enum Kind {
        VET,
        LOOK,
        SAMPLE,
        MOVE,
        WEIGHING,
        DIARY
    }

    /**
     * One thing that happened.
     *
     * @param on the day, in the organisation's zone
     * @param at the moment, where it is known
     * @param what in a word or two
     * @param text what was seen, measured, done or said, for people
     * @param by who saw or recorded it
     * @param about what a reader must know to trust it
     * @param id of a look, a weighing and a line of the diary: which
     */
    public record Event(
            Kind kind,
            LocalDate on,
            Optional<Instant> at,
            String what,
            String text,
            Optional<String> by,
            Optional<String> about,
            Optional<UUID> id) {}

    /**
     * What a page tells.
     *
     * @param events everything, the last first
     * @param signs which signs were seen at which look
     */
    public record Told(List<Event> events, SignHistory signs) {

        public Told {
            events = List.copyOf(events);
        }
    }

    /**
     * @param zone the organisation's
     * @param mostLooks signs of so many looks, the last ones
     */
    @Transactional(readOnly = true)
    public Told read(UUID organisationId, ZoneId zone, Animals.Newcomer animal, Instant now, int mostLooks) {
        Visit visit = new Visit(organisationId, zone, animal, now);
        return new Told(events(visit), SignHistory.of(looks.list(visit), mostLooks, zone, texts));
    }

    private List<Event> events(Visit visit) {
        UUID organisationId = visit.organisationId();
        UUID animalId = visit.animalId();
        List<Event> events = new ArrayList<>();
        looks.list(visit)
                .forEach(look -> events.add(event(
                        visit, Kind.LOOK, history.look(visit, look), look.kept().id())));
        records.diary(visit)
                .forEach(entry -> events.add(event(visit, Kind.DIARY, history.entry(visit, entry), entry.id())));
        records.weights(visit)
                .ifPresent(words -> words.weighings()
                        .forEach(each -> events.add(
                                event(visit, Kind.WEIGHING, WeightPart.weighing(each, "weighing", texts), each.id()))));
        for (SampleWords sample : samples.listWords(organisationId, animalId)) {
            events.add(event(visit, Kind.SAMPLE, samplesPart.sample(sample), null));
        }
        followUps
                .listMoves(organisationId, animalId)
                .forEach(move -> events.add(event(visit, Kind.MOVE, move(visit, move), null)));
        recommendations
                .listAnswers(organisationId, animalId)
                .forEach(answer -> events.add(event(visit, Kind.VET, answer(answer), null)));
        events.sort(Comparator.comparing(Event::on)
                .thenComparing(event -> event.at().orElseGet(() -> endOf(event.on(), visit.zone())))
                .reversed()
                .thenComparing(Event::kind));
        return events;
    }

    private Statement move(Visit visit, FollowUps.Move move) {
        String text = move.room()
                .map(room -> texts.say("moved-to", "room", room.name()))
                .orElseGet(() -> texts.word("because", move.because().orElse("moved-on")));
        return Statement.of("move", Basis.RECORDED, texts.label("move"), text)
                .on(move.on())
                .by(names.of(visit, move.recordedBy()))
                .qualified(move.reason().orElse(null));
    }

    private Statement answer(VetAnswer answer) {
        String said = answersPart.said(answer, false).stream()
                .map(each -> each.label() + ": " + each.text())
                .collect(Collectors.joining("\n"));
        return Statement.of("vets-answer", Basis.VET, texts.label("vets-answer"), said)
                .at(answer.answeredAt())
                .by(VetsAnswersPart.who(answer))
                .qualified(answersPart.doubt(answer));
    }

    private static Event event(Visit visit, Kind kind, Statement said, @Nullable UUID id) {
        LocalDate on = said.at() == null
                ? Objects.requireNonNull(said.on(), "a day")
                : LocalDate.ofInstant(said.at(), visit.zone());
        return new Event(
                kind,
                on,
                Optional.ofNullable(said.at()),
                Markup.clean(said.label()),
                Markup.clean(said.text()),
                Optional.ofNullable(said.by()).map(Markup::clean),
                Optional.ofNullable(said.qualifier()).map(Markup::clean),
                Optional.ofNullable(id));
    }

    private static Instant endOf(LocalDate day, ZoneId zone) {
        return day.plusDays(1).atStartOfDay(zone).toInstant();
    }
}
