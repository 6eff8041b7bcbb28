package varanid.intake.visit;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.vet.Recommendations;
import varanid.intake.vet.VetAnswer;

/** What vets answered, the last first, in their own words. */
@Component
class VetsAnswersPart implements PartReader {

    private final Recommendations recommendations;
    private final HandOverTexts texts;

    VetsAnswersPart(Recommendations recommendations, HandOverTexts texts) {
        this.recommendations = recommendations;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.VETS_ANSWERS;
    }

    @Override
    public List<Statement> read(Visit visit) {
        List<VetAnswer> answers = recommendations.listAnswers(visit.organisationId(), visit.animalId());
        List<Statement> said = new ArrayList<>();
        for (int i = answers.size() - 1; i >= 0; i--) {
            said.addAll(said(answers.get(i), i == answers.size() - 1));
        }
        return said;
    }

    List<Statement> said(VetAnswer answer, boolean last) {
        List<Statement> said = new ArrayList<>();
        said.add(of(
                answer, "vet-seen", texts.word("saw-animal", answer.sawAnimal().code())));
        answer.urgency()
                .ifPresent(urgency -> said.add(of(answer, "vet-urgency", texts.headline(urgency))
                        .coded("request-priority", urgency, null)
                        .weighing(last ? Statement.Weight.STRONG : Statement.Weight.PLAIN)));
        answer.isolation()
                .ifPresent(isolation -> said.add(of(answer, "vet-isolation", texts.word("isolation", isolation))));
        answer.findings().forEach(verdict -> said.add(finding(answer, verdict)));
        answer.tests()
                .forEach(test -> said.add(of(
                                answer,
                                "vet-test",
                                test.result()
                                        .map(result -> test.words() + ": " + result)
                                        .orElse(test.words()))
                        .on(test.on().orElse(null))));
        answer.instructions()
                .ifPresent(
                        words -> said.add(of(answer, "vet-instructions", words).weighing(Statement.Weight.STRONG)));
        answer.rulings()
                .forEach(ruling -> said.add(of(
                        answer,
                        "vet-ruling",
                        HandOverTexts.plain(ruling.cause()) + ": "
                                + texts.word("ruling", ruling.ruling().code()))));
        answer.quarantineUntil().ifPresent(day -> said.add(of(answer, "vet-until", ReaderDates.PAPER.shortDay(day))));
        answer.approvesRelease()
                .ifPresent(yes -> said.add(of(answer, "vet-release", texts.word("answer", yes ? "yes" : "no"))));
        answer.nextVisit().ifPresent(day -> said.add(of(answer, "vet-next-visit", ReaderDates.PAPER.shortDay(day))));
        answer.words().ifPresent(words -> said.add(of(answer, "vet-words", words)));
        return said;
    }

    private Statement finding(VetAnswer answer, VetAnswer.FindingVerdict verdict) {
        List<String> text = new ArrayList<>();
        text.add(texts.word("verdict", verdict.verdict().code()));
        verdict.level().map(HandOverTexts::plain).ifPresent(text::add);
        verdict.words().ifPresent(text::add);
        Statement statement = Statement.of(
                        "vet-finding",
                        Basis.VET,
                        verdict.finding().map(HandOverTexts::plain).orElse(texts.label("vet-finding")),
                        String.join("; ", text))
                .at(answer.answeredAt())
                .by(who(answer))
                .qualified(doubt(answer));
        return verdict.finding()
                .map(finding -> statement.coded(
                        LookShown.FINDING, finding, verdict.level().orElse(null)))
                .orElse(statement);
    }

    private Statement of(VetAnswer answer, String code, String text) {
        return Statement.of(code, Basis.VET, texts.label(code), text)
                .at(answer.answeredAt())
                .by(who(answer))
                .qualified(doubt(answer));
    }

    static String who(VetAnswer answer) {
        return answer.writer().name() + ", " + answer.writer().practice() + ", "
                + answer.writer().licenceStatement();
    }

    String doubt(VetAnswer answer) {
        return texts.say(answer.confirmed() ? "vet-confirmed" : "vet-unconfirmed");
    }
}
