package varanid.intake.visit;

import java.util.List;

/** Reads what has to head every page. */
interface AlertReader {

    /** The weightiest first; nothing where there is nothing. */
    List<Summary.Alert> read(Visit visit);
}
