package varanid.intake.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** A page costs what it shows, whatever there is besides: how PostgreSQL ran each query, among 20,000 entries. */
@ServiceTest
class PagesAreStretchesOfAnIndexIT {

    private static final int ANIMALS = 20_000;
    private static final int ROOMS = 100;
    private static final int FETCH = 51;
    private static final JsonMapper JSON = JsonMapper.shared();

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    PlatformTransactionManager transactions;

    @Autowired
    WorklistRows rows;

    @Autowired
    Environment environment;

    private UUID organisation;
    private final LocalDate today = LocalDate.of(2026, 11, 25);

    @BeforeEach
    void manyEntries() {
        Organisations.Organisation made = organisations.create();
        organisation = made.id();
        ManyEntries.insert(jdbc, organisation, made.keeper().personId(), ANIMALS, ROOMS, today);
        analyse();
    }

    /** As the database does by itself after a while, which no test can wait for. Only the owner may. */
    private void analyse() {
        try (Connection owner = DriverManager.getConnection(
                        environment.getRequiredProperty("spring.datasource.url"),
                        environment.getRequiredProperty("spring.flyway.user"),
                        environment.getRequiredProperty("spring.flyway.password"));
                Statement statement = owner.createStatement()) {
            statement.execute("ANALYZE worklist_entry");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void firstAndDeepPagesOfBothLists() {
        Optional<UUID> everywhere = Optional.empty();
        Optional<UUID> room = Optional.of(ManyEntries.room(7));
        for (Only only : Only.values()) {
            for (Only.Stretch stretch : only.stretches(today)) {
                for (Optional<ActPlace> after : places(stretch)) {
                    WorklistRows.actNow(organisation, only, everywhere, stretch, after, FETCH)
                            .ifPresent(select -> assertStretch(only + " " + after, select, index(only, "")));
                    WorklistRows.actNow(organisation, only, room, stretch, after, FETCH)
                            .ifPresent(select ->
                                    assertStretch(only + " of a room " + after, select, index(only, "of_room_")));
                }
            }
        }
        for (Optional<RoundsPlace> after : List.of(
                Optional.<RoundsPlace>empty(),
                Optional.of(new RoundsPlace(112, "Room 050", new UUID(0, 0))),
                Optional.of(new RoundsPlace(314, "", new UUID(0, 0))))) {
            assertStretch(
                    "rounds " + after,
                    WorklistRows.rounds(organisation, everywhere, Optional.empty(), after, FETCH),
                    "worklist_rounds");
            assertStretch(
                    "due rounds " + after,
                    WorklistRows.rounds(organisation, everywhere, Optional.of(today), after, FETCH),
                    "worklist_rounds");
            assertStretch(
                    "rounds of a room " + after,
                    WorklistRows.rounds(organisation, room, Optional.empty(), after, FETCH),
                    "worklist_rounds_of_room");
            assertStretch(
                    "due rounds of a room " + after,
                    WorklistRows.rounds(organisation, room, Optional.of(today), after, FETCH),
                    "worklist_rounds_of_room");
        }
    }

    @Test
    void theRoomsAreFoundByOneStepThroughAnIndexForEach() {
        JsonNode plan = explain(WorklistRows.rooms(organisation, Worklist.MOST_ROOMS));
        List<JsonNode> nodes = new ArrayList<>();
        collect(plan.get("Plan"), nodes);
        double entries = 0;
        for (JsonNode node : nodes) {
            String type = node.get("Node Type").stringValue();
            assertThat(type).as("%s", plan).isNotIn("Seq Scan", "Sort", "Incremental Sort", "Bitmap Heap Scan");
            if (type.startsWith("Index")) {
                entries += node.get("Actual Rows").asDouble()
                        * node.get("Actual Loops").asDouble();
            }
        }
        assertThat(entries).as("%s", plan).isBetween(2.0, Worklist.MOST_ROOMS + 1.0);
        assertThat(plan.get("Plan").get("Actual Rows").asDouble()).isGreaterThan(1);
    }

    private static String index(Only only, String where) {
        return "worklist_" + where
                + switch (only) {
                    case OVERDUE -> "by_delay";
                    case WORSE -> "worse";
                    default -> "by_urgency";
                };
    }

    private List<Optional<ActPlace>> places(Only.Stretch stretch) {
        ActRank last = stretch.last();
        return List.of(
                Optional.empty(),
                Optional.of(new ActPlace(last.number(), today.minusDays(20), new UUID(0, 0))),
                Optional.of(new ActPlace(last.number(), today.minusDays(2), new UUID(-1, -1))));
    }

    private void assertStretch(String what, WorklistRows.Select select, String index) {
        JsonNode plan = explain(select);
        List<JsonNode> nodes = new ArrayList<>();
        collect(plan.get("Plan"), nodes);
        assertThat(nodes)
                .as("%s: %s", what, plan)
                .extracting(node -> node.get("Node Type").stringValue())
                .containsExactly("Limit", "Index Scan");
        JsonNode scan = nodes.get(1);
        assertThat(scan.get("Index Name").stringValue()).as(what).isEqualTo(index);
        assertThat(scan.get("Actual Rows").asDouble()).as("%s: %s", what, plan).isLessThanOrEqualTo(FETCH);
        assertThat(scan.path("Rows Removed by Filter").asInt())
                .as("%s: %s", what, plan)
                .isZero();
        // A page of the table for each row at most, and the way down the index and along it.
        assertThat(scan.get("Shared Hit Blocks").asInt()
                        + scan.get("Shared Read Blocks").asInt())
                .as("%s: %s", what, plan)
                .isLessThanOrEqualTo(2 * FETCH);
    }

    private JsonNode explain(WorklistRows.Select select) {
        return Objects.requireNonNull(new TransactionTemplate(transactions).execute(status -> {
            rows.inTheOrderOfAnIndex();
            return JSON.readTree(jdbc.sql("EXPLAIN (ANALYZE, BUFFERS, FORMAT JSON) " + select.sql())
                            .params(Map.copyOf(select.values()))
                            .query(String.class)
                            .single())
                    .get(0);
        }));
    }

    private static void collect(JsonNode node, List<JsonNode> nodes) {
        nodes.add(node);
        node.path("Plans").forEach(child -> collect(child, nodes));
    }
}
