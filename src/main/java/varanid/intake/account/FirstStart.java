package varanid.intake.account;

import java.io.IOException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.boot.ApplicationArguments;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;
import varanid.intake.platform.web.Role;

/**
 * Makes the organisation and its administrator where there are none, before the first request is taken, and writes the
 * administrator's token into the file {@code token} of the home folder.
 *
 * <p>The file is durable before the hash is committed: a crash between the two leaves a token that opens nothing, and
 * the next start writes another. The other way round, nobody would ever have had the token. An advisory lock lets only
 * one of several services on one database do it.
 */
@Component
class FirstStart implements SmartInitializingSingleton {

    /** The file in the home folder. */
    static final String TOKEN_FILE = "token";

    /** The argument that makes a new token in place of one that was lost or seen. */
    static final String REISSUE = "reissue-token";

    private static final Logger LOG = LoggerFactory.getLogger(FirstStart.class);

    /** Any number that nothing else on the database locks. */
    private static final long LOCK = 0x5661_7261_6E69_6401L;

    private final HomeFolder home;
    private final ApplicationArguments arguments;
    private final Accounts accounts;
    private final Organisations organisations;
    private final People people;
    private final Tokens tokens;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Clock clock;

    FirstStart(
            HomeFolder home,
            ApplicationArguments arguments,
            Accounts accounts,
            Organisations organisations,
            People people,
            Tokens tokens,
            JdbcClient jdbc,
            PlatformTransactionManager transactions,
            Clock clock) {
        this.home = home;
        this.arguments = arguments;
        this.accounts = accounts;
        this.organisations = organisations;
        this.people = people;
        this.tokens = tokens;
        this.jdbc = jdbc;
        this.transaction = new TransactionTemplate(transactions);
        this.clock = clock;
    }

    @Override
    public void afterSingletonsInstantiated() {
        transaction.executeWithoutResult(status -> {
            jdbc.sql("SELECT pg_advisory_xact_lock(?)").param(LOCK).query((RowCallbackHandler) row -> {});
            organisations.findByMadeAtFirstStartTrue().ifPresentOrElse(this::startAgain, this::startFirst);
        });
    }

    private void startFirst() {
        UUID organisation = accounts.addOrganisation("My animals", zone(), null, true);
        UUID administrator = accounts.addPerson(organisation, "Administrator", Set.of(Role.ADMINISTRATOR));
        issue(organisation, administrator);
        LOG.info("First start: an organisation, its administrator and their token were made.");
    }

    private void startAgain(OrganisationRow organisation) {
        if (!arguments.containsOption(REISSUE)) {
            return;
        }
        UUID id = organisation.organisationId();
        List<PersonRow> administrators = people.listActiveAdministrators(id);
        tokens.listWithoutEnd(id).forEach(token -> {
            token.revoke(clock.instant());
            tokens.save(token);
        });
        issue(id, administrators.get(0).id());
        LOG.info("A new administrator's token was written; the one before opens nothing any more.");
    }

    private void issue(UUID organisation, UUID administrator) {
        TokenText text = TokenText.random(organisation);
        accounts.addToken(organisation, administrator, administrator, "First start", text, null, clock.instant());
        try {
            home.write(TOKEN_FILE, text.text() + "\n");
        } catch (IOException e) {
            throw CannotStart.becauseOf(e, home.resolve(TOKEN_FILE));
        }
    }

    /** The machine's zone is the best guess of the keeper's; it can be changed. */
    private static ZoneId zone() {
        ZoneId machine = ZoneId.systemDefault();
        return ZoneId.getAvailableZoneIds().contains(machine.getId()) ? machine : ZoneId.of("UTC");
    }
}
