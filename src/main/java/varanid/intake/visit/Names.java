package varanid.intake.visit;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import varanid.intake.account.PeopleNames;

/** What people are called. */
@Component
class Names {

    private final PeopleNames people;

    Names(PeopleNames people) {
        this.people = people;
    }

    @Nullable
    String of(Visit visit, UUID personId) {
        return visit.once(personId, () -> people.find(visit.organisationId(), personId))
                .orElse(null);
    }
}
