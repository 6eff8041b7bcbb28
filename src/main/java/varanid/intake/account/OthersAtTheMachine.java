package varanid.intake.account;

import java.util.List;
import java.util.UUID;

/** Who else may be signed in by whoever starts the service on a machine of their own, such as the people of a demo. */
public interface OthersAtTheMachine {

    /** @param name what they are called where the links are printed */
    record Other(UUID organisationId, UUID personId, String name) {}

    List<Other> list();
}
