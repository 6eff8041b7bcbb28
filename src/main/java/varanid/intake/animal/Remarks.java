package varanid.intake.animal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import varanid.intake.animal.ReferenceData.Species;

/** Finds what a person should look at in what is recorded about an animal. */
final class Remarks {

    private final ReferenceData reference;
    private final List<Remark> remarks = new ArrayList<>();

    private Remarks(ReferenceData reference) {
        this.reference = reference;
    }

    static List<Remark> about(
            AnimalDetails details, List<WeightReading> weights, List<LengthReading> lengths, ReferenceData reference) {
        Remarks found = new Remarks(reference);
        found.species(details);
        found.lifeStage(details);
        found.declaredOrigin(details);
        found.transponder(details);
        found.papers(details);
        found.weights(weights);
        found.lengths(lengths);
        return List.copyOf(found.remarks);
    }

    private void species(AnimalDetails details) {
        if (details.species() == null) {
            add("#/species", "the species is not known; whoever can tell it should look");
            return;
        }
        Optional<Species> listed = reference.findSpecies(details.species());
        if (listed.isEmpty()) {
            add(
                    "#/species",
                    "this name is not in our list of monitors; look at the spelling, and treat the CITES appendix as"
                            + " unknown");
        } else if (!listed.get().authority().equals(details.authority())) {
            add("#/species/authority", "our list has " + listed.get().authority() + " for this species");
        }
    }

    private void lifeStage(AnimalDetails details) {
        if (details.lifeStage() == LifeStage.UNKNOWN) {
            add("#/lifeStage", "not known: the checklist then counts the animal as a hatchling");
        }
    }

    private void declaredOrigin(AnimalDetails details) {
        if (details.declaredOrigin() == null) {
            return;
        }
        SourceCode code = reference.getSourceCode(details.declaredOrigin());
        if (code.use() == SourceCode.Use.IMPLAUSIBLE) {
            add("#/declaredOrigin", code.code() + " (" + code.meaning() + ") is implausible for a live monitor");
        }
        boolean listed = details.species() != null
                && reference.findSpecies(details.species()).isPresent();
        if (code.use() == SourceCode.Use.APPENDIX_I_ONLY && !listed) {
            add("#/declaredOrigin", code.code() + " is for Appendix I only, and the appendix of this one is not known");
        }
    }

    private void transponder(AnimalDetails details) {
        if (details.transponder() == null) {
            return;
        }
        Transponder transponder = Transponder.parse(details.transponder());
        if (transponder.standard() == Transponder.Standard.UNVERIFIED) {
            add("#/transponder", "non-ISO, unverified: an older chip, of which only the form could be looked at");
        } else if (transponder.issuer() == Transponder.Issuer.COUNTRY && !reference.isCountry(transponder.prefix())) {
            add("#/transponder", "begins with " + transponder.prefix() + ", which no country has at present");
        }
    }

    private void papers(AnimalDetails details) {
        for (int i = 0; i < details.papers().size(); i++) {
            String pointer = "#/papers/" + i;
            details.papers().get(i).remark(details.arrivedOn()).ifPresent(text -> add(pointer, text));
        }
    }

    private void weights(List<WeightReading> weights) {
        for (int i = 0; i < weights.size(); i++) {
            remarks.addAll(weights.get(i).listRemarks("#/weights/" + i));
        }
    }

    private void lengths(List<LengthReading> lengths) {
        for (int i = 0; i < lengths.size(); i++) {
            remarks.addAll(lengths.get(i).listRemarks("#/lengths/" + i));
        }
        LengthReading.findSumRemark("#/lengths", lengths).ifPresent(remarks::add);
    }

    private void add(String pointer, String remark) {
        remarks.add(new Remark(pointer, remark));
    }
}
