package varanid.intake.service;

import java.time.Duration;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import varanid.intake.account.Accounts;
import varanid.intake.platform.web.Role;

/** Makes an organisation for a test, with people who can ask the service. */
@Component("testOrganisations")
public class Organisations {

    private final Accounts accounts;
    private final TransactionTemplate transaction;
    private final Environment environment;

    Organisations(Accounts accounts, PlatformTransactionManager transactions, Environment environment) {
        this.accounts = accounts;
        this.transaction = new TransactionTemplate(transactions);
        this.environment = environment;
    }

    /** In UTC. */
    public Organisation create() {
        return create(ZoneId.of("UTC"));
    }

    public Organisation create(ZoneId zone) {
        return new Organisation(inTransaction(() -> accounts.addOrganisation("A rescue", zone)));
    }

    /** Somebody without a token. */
    public Client nobody() {
        return new Client(port(), new UUID(0, 0), "");
    }

    private int port() {
        return environment.getRequiredProperty("local.server.port", Integer.class);
    }

    private <T> T inTransaction(Supplier<T> something) {
        return Objects.requireNonNull(transaction.execute(status -> something.get()));
    }

    /** An organisation of one test. */
    public final class Organisation {

        private final UUID id;

        Organisation(UUID id) {
            this.id = id;
        }

        public UUID id() {
            return id;
        }

        public Client keeper() {
            return person(Role.KEEPER);
        }

        public Client administrator() {
            return person(Role.ADMINISTRATOR);
        }

        public Client clinician() {
            return person(Role.CLINICIAN);
        }

        /** A new person of the organisation. */
        public Client person(Role... roles) {
            return person("A person", Duration.ofDays(1), roles);
        }

        /** A new person whose token lives so long, for tests in which months pass. */
        public Client person(String name, Duration tokenLife, Role... roles) {
            return inTransaction(() -> {
                UUID person = accounts.addPerson(id, name, Set.of(roles));
                String token = accounts.addToken(id, person, "test", tokenLife).text();
                return new Client(port(), person, token);
            });
        }
    }
}
