package varanid.intake.animal;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import varanid.intake.animal.ReferenceData.Species;
import varanid.intake.measures.Resolution;

/** Finds what a person should look at in what is recorded about an animal. */
final class Remarks {

    /** Snout to vent and tail may differ from the total by this part of it; our own proposal. */
    private static final BigDecimal LENGTHS_MAY_DIFFER_BY = new BigDecimal("0.03");

    private final ReferenceData reference;
    private final List<Remark> remarks = new ArrayList<>();

    private Remarks(ReferenceData reference) {
        this.reference = reference;
    }

    static List<Remark> about(
            AnimalDetails details, List<FirstWeight> weights, List<FirstLength> lengths, ReferenceData reference) {
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

    private void weights(List<FirstWeight> weights) {
        for (int i = 0; i < weights.size(); i++) {
            FirstWeight weight = weights.get(i);
            String pointer = "#/weights/" + i;
            if (!weight.mass().isPlausible()) {
                add(pointer + "/value", "no monitor is known to weigh this; it was confirmed by whoever read it");
            }
            if (weight.resolution() == null) {
                add(pointer + "/resolution", "without the scale's smallest step a later change cannot be judged well");
            } else {
                steps(pointer, weight.value(), weight.resolution());
            }
        }
    }

    private void lengths(List<FirstLength> lengths) {
        for (int i = 0; i < lengths.size(); i++) {
            FirstLength length = lengths.get(i);
            String pointer = "#/lengths/" + i;
            if (!length.isPlausible()) {
                add(pointer + "/value", "no monitor is known to measure this; it was confirmed by whoever read it");
            }
            if (length.resolution() != null) {
                steps(pointer, length.value(), length.resolution());
            }
        }
        Optional<BigDecimal> body = first(lengths, FirstLength.Part.SNOUT_VENT);
        Optional<BigDecimal> tail = first(lengths, FirstLength.Part.TAIL);
        Optional<BigDecimal> total = first(lengths, FirstLength.Part.TOTAL);
        if (body.isPresent() && tail.isPresent() && total.isPresent()) {
            BigDecimal sum = body.get().add(tail.get());
            BigDecimal difference = sum.subtract(total.get()).abs();
            if (difference.compareTo(total.get().multiply(LENGTHS_MAY_DIFFER_BY)) > 0) {
                add(
                        "#/lengths",
                        "snout to vent and tail make " + sum.toPlainString() + " mm, the total is "
                                + total.get().toPlainString() + " mm: more than 3 % apart, so one of them was misread");
            }
        }
    }

    private static Optional<BigDecimal> first(List<FirstLength> lengths, FirstLength.Part part) {
        return lengths.stream()
                .filter(length -> length.of() == part)
                .map(FirstLength::millimetres)
                .findFirst();
    }

    private void steps(String pointer, BigDecimal value, BigDecimal step) {
        if (!new Resolution(step).canShow(value)) {
            add(
                    pointer + "/resolution",
                    value.toPlainString() + " is no whole number of steps of " + step.toPlainString());
        }
    }

    private void add(String pointer, String remark) {
        remarks.add(new Remark(pointer, remark));
    }
}
