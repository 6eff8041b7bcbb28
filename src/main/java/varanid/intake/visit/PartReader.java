package varanid.intake.visit;

import java.util.List;

/** Reads what one feature has to say in one part. Several may fill one part: they come in the order of the beans. */
interface PartReader {

    /** Where it stands. */
    Part part();

    /** What it says, in order; nothing where there is nothing. */
    List<Statement> read(Visit visit);
}
