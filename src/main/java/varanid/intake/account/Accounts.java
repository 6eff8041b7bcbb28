package varanid.intake.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.id.RowKey;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Secret;

/** Sets up organisations, people and tokens where no request does it: at the first start, and for a demo. */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class Accounts {

    /** How long a token is good for when nobody says. */
    public static final Duration USUAL_TOKEN_LIFE = Duration.ofDays(90);

    private final Organisations organisations;
    private final People people;
    private final Tokens tokens;
    private final Ids ids;
    private final Clock clock;

    Accounts(Organisations organisations, People people, Tokens tokens, Ids ids, Clock clock) {
        this.organisations = organisations;
        this.people = people;
        this.tokens = tokens;
        this.ids = ids;
        this.clock = clock;
    }

    /** A new organisation; its id. */
    public UUID addOrganisation(String name, ZoneId zone) {
        return addOrganisation(name, zone, null, false);
    }

    /** A new organisation that can be called; its id. */
    public UUID addOrganisation(String name, ZoneId zone, String phone) {
        return addOrganisation(name, zone, phone, false);
    }

    UUID addOrganisation(String name, ZoneId zone, @Nullable String phone, boolean atFirstStart) {
        return organisations
                .save(new OrganisationRow(ids.next(), name, zone, phone, atFirstStart, clock.instant()))
                .organisationId();
    }

    /** A new person of the organisation; their id. */
    public UUID addPerson(UUID organisationId, String name, Set<Role> roles) {
        return addPersonRow(organisationId, name, roles).id();
    }

    PersonRow addPersonRow(UUID organisationId, String name, Set<Role> roles) {
        return people.saveAndFlush(new PersonRow(new RowKey(organisationId, ids.next()), name, roles, clock.instant()));
    }

    /** A new token for the person, which is nowhere but in the reply. */
    public Secret addToken(UUID organisationId, UUID personId, String label, Duration life) {
        TokenText text = TokenText.random(organisationId);
        Instant now = clock.instant();
        addToken(organisationId, personId, personId, label, text, now.plus(life), now);
        return new Secret(text.text());
    }

    TokenRow addToken(
            UUID organisationId,
            UUID personId,
            UUID issuedBy,
            String label,
            TokenText text,
            @Nullable Instant expiresAt,
            Instant now) {
        RowKey key = new RowKey(organisationId, ids.next());
        return tokens.save(new TokenRow(key, personId, issuedBy, label, text, expiresAt, now));
    }
}
