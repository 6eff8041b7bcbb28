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
import java.util.function.Function;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import varanid.intake.account.Accounts;
import varanid.intake.animal.Arrivals;
import varanid.intake.assessment.Assessments;
import varanid.intake.condition.Lengths;
import varanid.intake.diary.DiaryKeeper;
import varanid.intake.enclosure.EnclosureReadings;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Secret;
import varanid.intake.quarantine.QuarantineRecords;
import varanid.intake.report.Reports;
import varanid.intake.sample.Samples;
import varanid.intake.vet.VetAnswers;
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
    private final Lengths lengths;
    private final EnclosureReadings readings;
    private final DiaryKeeper diary;
    private final Samples samples;
    private final Reports reports;
    private final VetAnswers answers;
    private final QuarantineRecords quarantine;
    private final HomeFolder home;
    private final JdbcClient jdbc;
    private final Ids ids;
    private final Clock clock;

    DemoLoader(
            Accounts accounts,
            Arrivals arrivals,
            Assessments assessments,
            Weighings weighings,
            Lengths lengths,
            EnclosureReadings readings,
            DiaryKeeper diary,
            Samples samples,
            Reports reports,
            VetAnswers answers,
            QuarantineRecords quarantine,
            HomeFolder home,
            JdbcClient jdbc,
            Ids ids,
            Clock clock) {
        this.accounts = accounts;
        this.arrivals = arrivals;
        this.assessments = assessments;
        this.weighings = weighings;
        this.lengths = lengths;
        this.readings = readings;
        this.diary = diary;
        this.samples = samples;
        this.reports = reports;
        this.answers = answers;
        this.quarantine = quarantine;
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
        UUID organisation = accounts.addOrganisation(script.organisationName(), script.zone(), script.phone());
        Map<String, Caller> people = new HashMap<>();
        for (JsonNode person : script.content().get("people")) {
            people.put(person.get("is").stringValue(), addPerson(organisation, script.zone(), person));
        }
        jdbc.sql("INSERT INTO demo_organisation (organisation_id) VALUES (?)")
                .param(organisation)
                .update();
        Telling telling = new Telling(script, people, clock, clock.instant(), new HashMap<>());
        telling.make("consignments", arrivals::addConsignment);
        telling.make("rooms", quarantine::keepRoom);
        telling.make("animals", arrivals::addAnimal);
        // Before the looks and results, which are told to the room where the animal stood.
        telling.tell("placements", quarantine::keepPlacement);
        for (JsonNode animal : script.content().get("animals")) {
            UUID id = telling.get(animal.get("known-as").stringValue());
            // Weighings before the looks, which they answer.
            telling.each(animal.path("weighings"), request -> weighings.keep(telling.keeper(), id, request));
            telling.each(animal.path("lengths"), request -> lengths.keep(telling.keeper(), id, request));
            telling.each(animal.path("enclosure-readings"), request -> readings.keep(telling.keeper(), id, request));
            telling.each(animal.path("looks"), request -> assessments.keep(telling.keeper(), id, request));
            telling.each(animal.path("diary"), request -> diary.keep(telling.keeper(), id, request));
            telling.each(animal.path("reports"), request -> reports.keep(telling.keeper(), id, request));
            for (JsonNode sample : animal.path("samples")) {
                UUID taken = telling.one(sample.get("is"), request -> samples.keep(telling.keeper(), id, request));
                telling.each(
                        sample.path("results"), request -> samples.keepResult(telling.keeper(), id, taken, request));
            }
        }
        telling.tell("room-events", quarantine::keepEvent);
        telling.tell("legal-holds", quarantine::keepLegalHold);
        telling.tell("vets-answers", answers::keep);
        telling.tell("approvals", quarantine::keepApproval);
        telling.tell("releases", quarantine::keepDecision);
        return script.content().get("animals").size();
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

    /** Sends a request that makes something. */
    private interface Making {
        UUID make(Caller caller, JsonRequest request);
    }

    /** Sends a request about something that is there. */
    private interface Saying {
        UUID say(Caller caller, UUID about, JsonRequest request);
    }

    /**
     * The script while it is being told.
     *
     * @param now when the telling began, from which moments and dates are counted
     * @param named ids of what was made, by name
     */
    private record Telling(
            DemoScript script, Map<String, Caller> people, Clock clock, Instant now, Map<String, String> named) {

        Caller keeper() {
            return Objects.requireNonNull(people.get("keeper"));
        }

        UUID get(String name) {
            return UUID.fromString(Objects.requireNonNull(named.get(name), name));
        }

        void make(String section, Making making) {
            for (JsonNode each : script.content().get(section)) {
                UUID id = one(each.get("is"), request -> making.make(keeper(), request));
                named.put(each.get("known-as").stringValue(), id.toString());
            }
        }

        void tell(String section, Saying saying) {
            for (JsonNode each : script.content().get(section)) {
                Caller by = Objects.requireNonNull(people.get(each.path("by").asString("keeper")));
                UUID of = get(each.get("of").stringValue());
                one(each.get("is"), request -> saying.say(by, of, request));
            }
        }

        /** What is said to have occurred at several moments is sent once for each. */
        void each(JsonNode requests, Function<JsonRequest, UUID> send) {
            for (JsonNode each : requests) {
                for (JsonNode once : script.unfold(each)) {
                    named.put("the-one-before", one(once, send).toString());
                }
            }
        }

        UUID one(JsonNode written, Function<JsonRequest, UUID> send) {
            // What has been recorded until now is what somebody who answers now has read.
            named.put(DemoScript.RECORDED_SO_FAR, clock.instant().toString());
            JsonNode request = script.resolve(written, now, named);
            try {
                return send.apply(JsonRequest.written(request));
            } catch (ProblemException e) {
                throw new IllegalStateException("the demo's " + request + " is refused: " + e.faults(), e);
            }
        }
    }
}
