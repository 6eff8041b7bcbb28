package varanid.intake.visit;

import java.util.List;
import java.util.function.BiFunction;
import varanid.intake.report.Standing;

/** What the people around the animal told, as far as it belongs into one part. */
record ToldPart(Part part, Records records, BiFunction<Visit, Standing, List<Statement>> statements)
        implements PartReader {

    @Override
    public List<Statement> read(Visit visit) {
        return statements.apply(visit, records.told(visit));
    }
}
