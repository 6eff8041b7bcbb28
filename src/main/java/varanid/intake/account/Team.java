package varanid.intake.account;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;

/** The people of an organisation, for the page on which an administrator looks after them. */
@Service
public class Team {

    private static final UUID FIRST = new UUID(0, 0);

    private final People people;
    private final Accounts accounts;
    private final SignInLinks links;
    private final Clock clock;

    Team(People people, Accounts accounts, SignInLinks links, Clock clock) {
        this.people = people;
        this.accounts = accounts;
        this.links = links;
        this.clock = clock;
    }

    /** A person, as others of the organisation see them. */
    public record Member(UUID id, String name, Set<Role> roles, boolean active) {}

    /**
     * A link that signs a person in once.
     *
     * @param path with its secret, which is shown now and never again
     */
    public record SignInLink(String name, String path, Instant expiresAt) {}

    /**
     * In the order in which they were added.
     *
     * @param after the last one that was seen; null: from the first
     */
    @Transactional(readOnly = true)
    public List<Member> list(Caller caller, @Nullable UUID after, int most) {
        return people.list(caller.organisationId(), after == null ? FIRST : after, Limit.of(most)).stream()
                .map(row -> new Member(row.id(), row.name(), row.roles(), row.active()))
                .toList();
    }

    /**
     * Adds a person, as a request of the interface says it.
     *
     * @throws ProblemException 403 for who is no administrator; 422 for a fault of the request
     */
    @Transactional
    public UUID add(Caller caller, JsonRequest request) {
        caller.require(Role.ADMINISTRATOR);
        PeopleController.NewPerson person = request.read(PeopleController.NewPerson::reader);
        return accounts.addPerson(caller.organisationId(), person.name(), Set.copyOf(person.roles()));
    }

    /** @throws ProblemException 403 for who is no administrator; 404 where there is no such active person */
    @Transactional
    public SignInLink makeSignInLink(Caller caller, UUID personId) {
        PersonRow person = getActive(caller, personId);
        SignInLinks.Made made = links.make(
                caller.organisationId(),
                personId,
                caller.personId(),
                clock.instant().plus(SignInLinks.USUAL_LIFE));
        return new SignInLink(person.name(), made.path(), made.expiresAt());
    }

    /** The person whom an administrator may let in. */
    PersonRow getActive(Caller caller, UUID personId) {
        caller.require(Role.ADMINISTRATOR);
        return people.findById(caller.key(personId))
                .filter(PersonRow::active)
                .orElseThrow(() -> ProblemException.notFound("active person"));
    }
}
