package varanid.intake.visit;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.ReadLook;

/** Makes the summary of an animal from everything that is recorded of it. */
@Service
class SummaryReader {

    private final List<PartReader> parts;
    private final List<AlertReader> alerts;
    private final StandingReader standing;
    private final LatestLook latestLook;
    private final Animals animals;
    private final Records records;
    private final HandOverTexts texts;
    private final Clock clock;

    SummaryReader(
            List<PartReader> parts,
            List<AlertReader> alerts,
            StandingReader standing,
            LatestLook latestLook,
            Animals animals,
            Records records,
            HandOverTexts texts,
            Clock clock) {
        this.parts = parts;
        this.alerts = alerts;
        this.standing = standing;
        this.latestLook = latestLook;
        this.animals = animals;
        this.records = records;
        this.texts = texts;
        this.clock = clock;
    }

    /** The summary as of now; empty where the organisation has no such animal. */
    @Transactional(readOnly = true)
    public Optional<Summary> find(UUID organisationId, ZoneId zone, UUID animalId) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        return animals.find(organisationId, animalId).map(animal -> read(new Visit(organisationId, zone, animal, now)));
    }

    private Summary read(Visit visit) {
        return new Summary(
                visit.now(),
                visit.today(),
                visit.zone(),
                subject(visit),
                alerts.stream().flatMap(reader -> reader.read(visit).stream()).toList(),
                standing.read(visit),
                sections(visit),
                records.weights(visit)
                        .map(words -> words.weighings().stream()
                                .map(each -> new Summary.WeightPoint(
                                        each.at(),
                                        each.day(),
                                        each.grams(),
                                        each.stepGrams().orElse(null),
                                        !each.heavy() && each.scale().isPresent()))
                                .toList())
                        .orElse(List.of()),
                latestLook.find(visit).map(ReadLook::document).orElse(null),
                texts.notices());
    }

    private Summary.Subject subject(Visit visit) {
        Animals.Newcomer animal = visit.animal();
        Animals.Profile profile = records.profile(visit);
        return new Summary.Subject(
                animal.id(),
                animal.name().orElse(texts.say("untitled")),
                animal.tag().orElse(null),
                animal.species().orElse(null),
                texts.word("life-stage", animal.lifeStage().code()),
                texts.word("sex", profile.sex()),
                profile.transponder().orElse(null));
    }

    private List<Summary.Section> sections(Visit visit) {
        List<Summary.Section> sections = new ArrayList<>();
        for (Part part : Part.values()) {
            List<Statement> statements = new ArrayList<>();
            parts.stream()
                    .filter(reader -> reader.part() == part)
                    .forEach(reader -> statements.addAll(reader.read(visit)));
            if (statements.isEmpty()) {
                texts.nothing(part)
                        .ifPresent(words -> statements.add(
                                Statement.of("nothing-recorded", Basis.RECORDED, texts.title(part), words)
                                        .weighing(Statement.Weight.SMALL)));
            }
            if (!statements.isEmpty()) {
                sections.add(new Summary.Section(part.code(), texts.title(part), part.isForLater(), statements));
            }
        }
        return sections;
    }
}
