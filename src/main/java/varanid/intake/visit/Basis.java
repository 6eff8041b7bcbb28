package varanid.intake.visit;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** How a statement came to be known. A reader tells them apart by the word, never by colour alone. */
enum Basis {
    /** A person saw, heard or smelt it while looking at the animal. */
    OBSERVED,
    /** An instrument said it, or a laboratory. */
    MEASURED,
    /** Somebody told it; nobody here saw it. */
    REPORTED,
    /** What somebody entered of the animal, its papers, its stay, and of what was done and arranged. */
    RECORDED,
    /** This service worked it out. */
    COMPUTED,
    /** A vet said it, and these are the vet's words. */
    VET;

    /** The word for it in files and replies. */
    @JsonValue
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
