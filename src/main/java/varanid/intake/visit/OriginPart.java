package varanid.intake.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.KeptLook;
import varanid.intake.assessment.Looks;
import varanid.intake.platform.time.ReaderDates;

/** Where it comes from, its papers, and what is known of those it came with. */
@Component
class OriginPart implements PartReader {

    private static final Set<String> SERIOUS = Set.of("asap", "stat");

    private final Animals animals;
    private final Records records;
    private final Looks looks;
    private final Names names;
    private final HandOverTexts texts;

    OriginPart(Animals animals, Records records, Looks looks, Names names, HandOverTexts texts) {
        this.animals = animals;
        this.records = records;
        this.looks = looks;
        this.names = names;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.ORIGIN;
    }

    @Override
    public List<Statement> read(Visit visit) {
        Animals.Newcomer animal = visit.animal();
        Animals.Profile profile = records.profile(visit);
        List<Statement> said = new ArrayList<>();
        said.add(Statement.of(
                        "declared-origin",
                        Basis.REPORTED,
                        texts.label("declared-origin"),
                        animal.declaredOrigin()
                                .map(code ->
                                        code + ": " + profile.declaredMeaning().orElse(""))
                                .orElse(texts.say("not-recorded")))
                .at(animal.recordedAt())
                .by(names.of(visit, profile.recordedBy())));
        said.add(Statement.of(
                        "assessed-origin",
                        Basis.COMPUTED,
                        texts.label("assessed-origin"),
                        texts.word("assessed-origin", animal.assessedOrigin().code()))
                .qualified(
                        profile.originReasons().isEmpty()
                                ? null
                                : texts.say("because-of", "what", String.join("; ", profile.originReasons()))));
        profile.papers().forEach(paper -> said.add(paper(paper)));
        if (profile.papers().isEmpty()) {
            said.add(Statement.of("no-paper", Basis.RECORDED, texts.label("no-paper"), texts.say("no-papers"))
                    .weighing(Statement.Weight.SMALL));
        }
        profile.cameWith().ifPresent(came -> said.addAll(came(visit, came)));
        profile.evidence()
                .forEach(answered -> said.add(Statement.of(
                                "evidence", Basis.REPORTED, answered.text(), texts.word("answer", answered.answer()))
                        .coded("origin-evidence", answered.question(), answered.answer())
                        .weighing(Statement.Weight.SMALL)));
        return said;
    }

    private Statement paper(Animals.PaperShown paper) {
        List<String> text = new ArrayList<>();
        text.add(paper.number().orElse(texts.say("no-number")));
        paper.issuedOn().ifPresent(day -> text.add(texts.say("issued", "day", ReaderDates.PAPER.shortDay(day))));
        paper.validUntil().ifPresent(day -> text.add(texts.say("valid", "day", ReaderDates.PAPER.shortDay(day))));
        return Statement.of("paper", Basis.RECORDED, texts.wordOr("paper", paper.kind()), String.join(", ", text))
                .qualified(paper.remark().orElse(null));
    }

    private List<Statement> came(Visit visit, Animals.CameWith came) {
        List<Statement> said = new ArrayList<>();
        String sender = came.sender().map(words -> ", " + words).orElse("");
        said.add(Statement.of("came-with", Basis.RECORDED, texts.label("came-with"), came.name() + sender)
                .qualified(came.notes().orElse(null)));
        List<Animals.Newcomer> companions =
                animals
                        .listOfConsignment(
                                visit.organisationId(),
                                visit.animal().consignmentId().orElseThrow())
                        .stream()
                        .filter(other -> !other.id().equals(visit.animalId()))
                        .toList();
        long serious = companions.stream()
                .map(other -> looks.findLatest(visit.organisationId(), other.id(), visit.today()))
                .flatMap(Optional::stream)
                .map(KeptLook::urgency)
                .filter(SERIOUS::contains)
                .count();
        said.add(Statement.of(
                "companions",
                Basis.COMPUTED,
                texts.label("companions"),
                texts.say(
                        "companions", "count", Integer.toString(companions.size()), "urgent", Long.toString(serious))));
        return said;
    }
}
