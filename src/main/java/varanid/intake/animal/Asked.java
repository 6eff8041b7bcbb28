package varanid.intake.animal;

import java.util.Comparator;
import java.util.List;
import org.springframework.stereotype.Component;

/** What is asked of a newcomer, in the words of the reference files, for a form. */
@Component
public class Asked {

    private final ReferenceData reference;

    Asked(ReferenceData reference) {
        this.reference = reference;
    }

    /** A code and what it means. */
    public record Choice(String code, String text) {}

    /** Questions about its origin; each is answered with yes, no or unknown. */
    public List<Choice> origins() {
        return reference.provenance().questions().stream()
                .map(question -> new Choice(question.id(), question.text()))
                .toList();
    }

    /** Names of species, in the order of letters. */
    public List<String> species() {
        return reference.listSpecies().stream()
                .map(ReferenceData.Species::name)
                .sorted(Comparator.naturalOrder())
                .toList();
    }

    /** Source codes that an animal can have. */
    public List<Choice> sourceCodes() {
        return reference.listSourceCodes().stream()
                .filter(code -> code.use() != SourceCode.Use.PLANTS_ONLY)
                .map(code -> new Choice(code.code(), code.code() + ": " + code.meaning()))
                .toList();
    }
}
