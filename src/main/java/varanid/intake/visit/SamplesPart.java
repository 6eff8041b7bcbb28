package varanid.intake.visit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import varanid.intake.assessment.SignWords;
import varanid.intake.sample.FreedomWords;
import varanid.intake.sample.SampleWords;
import varanid.intake.sample.Samples;

/** Samples, their results, and how probable freedom is after negative ones. */
@Component
class SamplesPart implements PartReader {

    private final Samples samples;
    private final HandOverTexts texts;

    SamplesPart(Samples samples, HandOverTexts texts) {
        this.samples = samples;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.SAMPLES;
    }

    @Override
    public List<Statement> read(Visit visit) {
        List<Statement> said = new ArrayList<>();
        for (SampleWords sample : samples.listWords(visit.organisationId(), visit.animalId())) {
            said.add(sample(sample));
            sample.results().stream()
                    .filter(result -> result.report().isPresent())
                    .forEach(result -> said.add(Statement.of(
                                    "report",
                                    Basis.REPORTED,
                                    texts.wordOr("method", result.method()),
                                    result.report().orElseThrow())
                            .on(result.reportedOn())
                            .by(result.laboratory().orElse(null))));
        }
        samples.listFreedom(visit.organisationId(), visit.animalId(), visit.today())
                .forEach(freedom -> said.add(freedom(freedom)));
        return said;
    }

    Statement sample(SampleWords sample) {
        List<String> text = new ArrayList<>();
        text.add(texts.wordOr("outcome", sample.outcome()).toLowerCase(java.util.Locale.ROOT));
        sample.results()
                .forEach(result -> text.add(texts.wordOr("method", result.method()) + ": "
                        + result.outcome()
                        + (result.agents().isEmpty()
                                ? ""
                                : " ("
                                        + result.agents().stream()
                                                .map(HandOverTexts::plain)
                                                .collect(Collectors.joining(", "))
                                        + ")")));
        if (!sample.awaited().isEmpty()) {
            text.add(texts.say(
                    "sample-awaited",
                    "methods",
                    sample.awaited().stream()
                            .map(method -> SignWords.small(texts.wordOr("method", method)))
                            .collect(Collectors.joining(", "))));
        }
        List<String> doubts = new ArrayList<>();
        doubts.add(sample.freshHours()
                .map(hours -> texts.say("fresh", "hours", Integer.toString(hours)))
                .orElse(texts.say("freshness-unknown")));
        sample.note().ifPresent(doubts::add);
        return Statement.of("sample", Basis.MEASURED, texts.wordOr("sample", sample.kind()), String.join("; ", text))
                .on(sample.takenOn())
                .qualified(String.join("; ", doubts))
                .coded("sample-kind", sample.kind(), sample.outcome())
                .weighing(sample.outcome().equals("positive") ? Statement.Weight.STRONG : Statement.Weight.PLAIN);
    }

    private Statement freedom(FreedomWords freedom) {
        return Statement.of(
                        "freedom",
                        Basis.COMPUTED,
                        label(freedom),
                        texts.say(
                                freedom.negatives() == 1 ? "freedom-one" : "freedom",
                                "correlated",
                                percent(freedom.correlated()),
                                "negatives",
                                Integer.toString(freedom.negatives()),
                                "method",
                                freedom.method(),
                                "independent",
                                percent(freedom.independent())))
                .qualified(texts.say("freedom-qualifier"))
                .weighing(Statement.Weight.SMALL);
    }

    private String label(FreedomWords freedom) {
        return texts.label("freedom").replace("{agent}", freedom.name());
    }

    /** Rounded down: it is never to look better than it is. */
    private static String percent(double probability) {
        return BigDecimal.valueOf(100 * probability)
                        .setScale(1, RoundingMode.DOWN)
                        .toPlainString()
                + " %";
    }
}
