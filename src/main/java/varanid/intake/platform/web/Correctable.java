package varanid.intake.platform.web;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * A kind of record of an animal that is never changed: a correction is another one, which supersedes it. Refuses
 * corrections of what is not there, and of what was corrected already.
 *
 * @param called how its refusals call it, such as {@code reading}
 * @param one what kind it is, such as {@code enclosure reading}
 * @param several the same of several
 */
public record Correctable(String called, String one, String several) {

    /**
     * @param isThere whether the animal has one of the id that {@code supersedes} names
     * @param successor what superseded it; asked for where it is there
     * @throws ProblemException 422 where it is not one of the animal, 409 where it was superseded already
     */
    public void check(boolean isThere, Supplier<Optional<UUID>> successor) {
        if (!isThere) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "The " + called + " that is to be superseded is not one of this animal.",
                    List.of(Fault.at(
                            "#/supersedes", "is no " + one + " of this animal", "the id of one of its " + several)));
        }
        successor.get().ifPresent(this::refuse);
    }

    /**
     * @param by what superseded it
     * @throws ProblemException 409, always
     */
    public void refuse(UUID by) {
        throw new ProblemException(
                ProblemType.CONFLICT, "That " + called + " was superseded already, by " + by + ". Supersede that one.");
    }
}
