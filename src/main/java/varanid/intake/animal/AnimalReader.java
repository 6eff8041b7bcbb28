package varanid.intake.animal;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.ReferenceData.Species;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** Reads what a request says about an animal. */
final class AnimalReader {

    private static final int MOST_READINGS = 20;
    private static final int MOST_PAPERS = 20;

    private final ReferenceData reference;
    private final Present present;
    private final Predicate<UUID> isConsignment;

    /** @param isConsignment whether the organisation has a consignment of that id */
    AnimalReader(ReferenceData reference, Present present, Predicate<UUID> isConsignment) {
        this.reference = reference;
        this.present = present;
        this.isConsignment = isConsignment;
    }

    /** All of a newcomer. */
    Supplier<Registration> registration(JsonFields fields) {
        Supplier<AnimalDetails> details = details(fields);
        Given<List<WeightReading>> weights = fields.list(
                "weights",
                MOST_READINGS,
                value -> value.object(
                        weight -> WeightReading.reader(weight, weight.pastInstant("occurredAt", present), present)));
        Given<List<LengthReading>> lengths = fields.list(
                "lengths",
                MOST_READINGS,
                value -> value.object(
                        length -> LengthReading.reader(length, length.pastInstant("occurredAt", present), present)));
        return () -> new Registration(details.get(), weights.orElse(List.of()), lengths.orElse(List.of()));
    }

    /** What can be corrected. */
    Supplier<AnimalDetails> details(JsonFields fields) {
        Given<String> name = fields.text("name", 100);
        Given<String> tag = fields.text("tag", 60);
        Given<SpeciesGiven> species = fields.object("species", AnimalReader::species);
        Given<LifeStage> lifeStage = fields.choice("lifeStage", List.of(LifeStage.values()), LifeStage::code);
        Given<Sex> sex = fields.choice("sex", List.of(Sex.values()), Sex::code);
        Given<SourceCode> declared = declaredOrigin(fields, species);
        Given<Map<String, Evidence>> evidence = evidence(fields);
        Given<List<Paper>> papers = fields.list("papers", MOST_PAPERS, value -> value.object(Paper::reader));
        Given<Transponder> transponder = fields.text("transponder", 40).map(Transponder.RIGHT, Transponder::parse);
        Given<UUID> consignment = fields.id("consignmentId")
                .check(isConsignment, "is no consignment of the organisation", "the id of one");
        Given<LocalDate> arrived = fields.pastDate("arrivedOn", present);
        Given<String> notes = fields.prose("notes", 4_000);
        return () -> new AnimalDetails(
                name.orNull(),
                tag.orNull(),
                species.find().map(given -> spelling(given.name())).orElse(null),
                species.find().map(this::authority).orElse(null),
                lifeStage.orElse(LifeStage.UNKNOWN),
                sex.orElse(Sex.UNKNOWN),
                declared.find().map(SourceCode::code).orElse(null),
                evidence.orElse(Map.of()),
                papers.orElse(List.of()),
                transponder.find().map(Transponder::number).orElse(null),
                consignment.orNull(),
                arrived.orNull(),
                notes.orNull());
    }

    private static Supplier<SpeciesGiven> species(JsonFields fields) {
        Given<String> name = fields.text("name", 100).required();
        Given<String> authority = fields.text("authority", 200);
        return () -> new SpeciesGiven(name.get(), authority.orNull());
    }

    private String spelling(String name) {
        return reference.findSpecies(name).map(Species::name).orElse(name);
    }

    private @Nullable String authority(SpeciesGiven given) {
        return given.authority() != null
                ? given.authority()
                : reference.findSpecies(given.name()).map(Species::authority).orElse(null);
    }

    private Given<SourceCode> declaredOrigin(JsonFields fields, Given<SpeciesGiven> species) {
        List<SourceCode> forAnimals = reference.listSourceCodes().stream()
                .filter(code -> code.use() != SourceCode.Use.PLANTS_ONLY)
                .toList();
        String right = "one of: " + forAnimals.stream().map(SourceCode::code).collect(Collectors.joining(", "));
        boolean knownNotToBeAppendixOne = species.find()
                .flatMap(given -> reference.findSpecies(given.name()))
                .filter(listed -> !listed.appendixOne())
                .isPresent();
        return fields.choice("declaredOrigin", reference.listSourceCodes(), SourceCode::code)
                .check(forAnimals::contains, "is a source code for plants", right)
                .check(
                        code -> code.use() != SourceCode.Use.APPENDIX_I_ONLY || !knownNotToBeAppendixOne,
                        "is for species of CITES Appendix I, which this one is not in",
                        "the code on the paper; C or F for animals born in captivity, U where it is not known");
    }

    private Given<Map<String, Evidence>> evidence(JsonFields fields) {
        List<String> known = reference.provenance().questions().stream()
                .map(ProvenanceRules.Question::id)
                .toList();
        return fields.entries(
                "evidence",
                100,
                (id, value) -> known.contains(id)
                        ? value.choice(List.of(Evidence.values()), Evidence::code)
                        : value.faulty("is not a question about origin", "only: " + String.join(", ", known)));
    }

    private record SpeciesGiven(String name, @Nullable String authority) {}
}
