package varanid.intake.demo;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.account.Accounts;
import varanid.intake.animal.Arrivals;
import varanid.intake.assessment.Assessments;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Secret;
import varanid.intake.weight.Weighings;

/** Makes the demo's organisation, all of it in one transaction. */
@Component
class DemoLoader {

    /** The longest that a token can be good for. */
    private static final Duration TOKEN_LIFE = Duration.ofDays(365);

    private final Accounts accounts;
    private final Arrivals arrivals;
    private final Assessments assessments;
    private final Weighings weighings;
    private final HomeFolder home;
    private final JdbcClient jdbc;
    private final Ids ids;
    private final Clock clock;

    DemoLoader(
            Accounts accounts,
            Arrivals arrivals,
            Assessments assessments,
            Weighings weighings,
            HomeFolder home,
            JdbcClient jdbc,
            Ids ids,
            Clock clock) {
        this.accounts = accounts;
        this.arrivals = arrivals;
        this.assessments = assessments;
        this.weighings = weighings;
        this.home = home;
        this.jdbc = jdbc;
        this.ids = ids;
        this.clock = clock;
    }

    /** How many animals were loaded; nothing where the demo was there already. */
    @Transactional
    public Optional<Integer> load() {
        jdbc.sql("SELECT pg_advisory_xact_lock(?)").param(Demo.LOCK).query((RowCallbackHandler) row -> {});
        boolean there = jdbc.sql("SELECT EXISTS (SELECT FROM demo_organisation)")
                .query(Boolean.class)
                .single();
        return there ? Optional.empty() : Optional.of(load(DemoScript.read()));
    }

    private int load(DemoScript script) {
        UUID organisation = accounts.addOrganisation(script.organisationName(), script.zone());
        Map<String, Caller> people = new HashMap<>();
        for (JsonNode person : script.content().get("people")) {
            people.put(person.get("is").stringValue(), addPerson(organisation, script.zone(), person));
        }
        jdbc.sql("INSERT INTO demo_organisation (organisation_id) VALUES (?)")
                .param(organisation)
                .update();
        Instant now = clock.instant();
        Map<String, String> named = new HashMap<>();
        Caller keeper = Objects.requireNonNull(people.get("keeper"));
        for (JsonNode consignment : script.content().get("consignments")) {
            JsonNode is = script.resolve(consignment.get("is"), now, named);
            UUID id = said(is, () -> arrivals.addConsignment(keeper, JsonRequest.written(is)));
            named.put(consignment.get("known-as").stringValue(), id.toString());
        }
        JsonNode animals = script.content().get("animals");
        for (JsonNode animal : animals) {
            load(script, animal, keeper, now, named);
        }
        return animals.size();
    }

    private void load(DemoScript script, JsonNode animal, Caller keeper, Instant now, Map<String, String> named) {
        JsonNode is = script.resolve(animal.get("is"), now, named);
        UUID id = said(is, () -> arrivals.addAnimal(keeper, JsonRequest.written(is)));
        // Before the looks, which they answer.
        for (JsonNode weighing : animal.path("weighings")) {
            JsonNode request = script.resolve(weighing, now, named);
            said(request, () -> weighings.keep(keeper, id, JsonRequest.written(request)));
        }
        for (JsonNode look : animal.path("looks")) {
            ObjectNode request = (ObjectNode) script.resolve(look, now, named);
            script.content().get("every-look").properties().forEach(it -> request.set(it.getKey(), it.getValue()));
            UUID kept = said(request, () -> assessments.keep(keeper, id, JsonRequest.written(request)));
            named.put("the-look-before", kept.toString());
        }
    }

    private Caller addPerson(UUID organisation, ZoneId zone, JsonNode person) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        person.get("roles")
                .forEach(role -> roles.add(Role.find(role.stringValue()).orElseThrow()));
        UUID id = accounts.addPerson(organisation, person.get("name").stringValue(), roles);
        Secret secret = accounts.addToken(organisation, id, "Demo", TOKEN_LIFE);
        if (person.has("token-file")) {
            write(person.get("token-file").stringValue(), secret);
        }
        // Only requests that are repeated by key ask for the token's id, and these have none.
        return new Caller(organisation, id, ids.next(), roles, zone, secret);
    }

    /** Durable before the transaction is: a crash between the two leaves tokens that open nothing, and no demo. */
    private void write(String file, Secret token) {
        try {
            home.write(file, token.text() + "\n");
        } catch (IOException e) {
            throw CannotStart.becauseOf(e, home.resolve(file));
        }
    }

    private static UUID said(JsonNode request, Supplier<UUID> add) {
        try {
            return add.get();
        } catch (ProblemException e) {
            throw new IllegalStateException("the demo's " + request + " is refused: " + e.faults(), e);
        }
    }
}
