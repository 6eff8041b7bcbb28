package varanid.intake.visit;

import java.util.ArrayList;
import java.util.List;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import varanid.intake.assessment.ReadLook;

/** How it behaves when handled, and what whoever handles it should be careful of. */
@Component
@Order(10)
class HandlingPart implements PartReader {

    private final LatestLook looks;
    private final Names names;
    private final HandOverTexts texts;

    HandlingPart(LatestLook looks, Names names, HandOverTexts texts) {
        this.looks = looks;
        this.names = names;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.HANDLING;
    }

    @Override
    public List<Statement> read(Visit visit) {
        List<Statement> said = new ArrayList<>();
        looks.find(visit).ifPresent(look -> said.addAll(behaviour(visit, look)));
        texts.cautions()
                .forEach(caution ->
                        said.add(Statement.of("caution", Basis.RECORDED, texts.label("caution"), caution.text())
                                .coded("caution", caution.id(), null)
                                .weighing(Statement.Weight.SMALL)));
        return said;
    }

    private List<Statement> behaviour(Visit visit, ReadLook look) {
        LookShown shown = new LookShown(look, texts, names.of(visit, look.observerId()));
        return texts.handlingFindings().stream()
                .flatMap(finding -> look.reading().find(finding).stream())
                .filter(state -> state.level() != null)
                .map(shown::sign)
                .map(statement -> statement.weighing(Statement.Weight.PLAIN))
                .toList();
    }
}
