package varanid.intake.visit;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import varanid.intake.weight.WeightWords;

/** Weights, what they changed by, and mass for length as a question. */
@Component
class WeightPart implements PartReader {

    private final Records records;
    private final HandOverTexts texts;

    WeightPart(Records records, HandOverTexts texts) {
        this.records = records;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.WEIGHT;
    }

    @Override
    public List<Statement> read(Visit visit) {
        return records.weights(visit).map(this::said).orElse(List.of());
    }

    private List<Statement> said(WeightWords words) {
        List<Statement> said = new ArrayList<>();
        said.add(weighing(words.weighings().get(words.weighings().size() - 1), "weight", texts)
                .weighing(Statement.Weight.STRONG));
        words.past()
                .forEach(past -> said.add(computed("weight-past", past.text())
                        .qualified(past.evidence().orElse(null))
                        .weighing(Statement.Weight.STRONG)));
        words.change().ifPresent(text -> said.add(computed("weight-change", text)));
        words.slope().ifPresent(text -> said.add(computed("weight-slope", text)));
        if (!words.cannotTell().isEmpty()) {
            said.add(computed("weight-open", String.join(" ", words.cannotTell()))
                    .weighing(Statement.Weight.SMALL));
        }
        words.massForLength().ifPresent(text -> said.add(computed("mass-for-length", text)));
        words.caveats().forEach(text -> said.add(computed("weight-caveat", text).weighing(Statement.Weight.SMALL)));
        return said;
    }

    private Statement computed(String code, String text) {
        return Statement.of(code, Basis.COMPUTED, texts.label(code), text);
    }

    static Statement weighing(WeightWords.On weighing, String code, HandOverTexts texts) {
        List<String> doubts = new ArrayList<>();
        weighing.stepGrams()
                .ifPresent(step -> doubts.add(
                        texts.say("step", "step", step.stripTrailingZeros().toPlainString())));
        if (weighing.heavy()) {
            doubts.add(texts.say("heavy"));
        }
        return Statement.of(code, Basis.MEASURED, texts.label(code), weighing.shown())
                .at(weighing.at())
                .qualified(doubts.isEmpty() ? null : String.join("; ", doubts))
                .measured(weighing.grams(), "g");
    }
}
