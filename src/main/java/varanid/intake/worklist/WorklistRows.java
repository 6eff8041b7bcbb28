package varanid.intake.worklist;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.quarantine.Isolation;
import varanid.intake.quarantine.RoundsOrder;
import varanid.intake.quarantine.Stage;
import varanid.intake.quarantine.WorkPlace;
import varanid.intake.worklist.WorklistFacts.OpenTask;
import varanid.intake.worklist.WorklistFacts.Reason;
import varanid.intake.worklist.WorklistFacts.Room;

/**
 * Stores entries and reads pages of them. It is written in SQL because each page is a stretch of one index, told by a
 * comparison of rows, which the query language of the mapping does not have.
 */
@Component
class WorklistRows {

    private static final TypeReference<List<Reason>> REASONS = new TypeReference<>() {};
    private static final TypeReference<List<OpenTask>> TASKS = new TypeReference<>() {};

    private static final String COLUMNS =
            "animal_id, label, room_id, room_name, urgency, headline, worse, compared_look,"
                    + " reasons::text AS reasons, tasks::text AS tasks, more_from, act_rank, due_from, due_until, work_place,"
                    + " isolation, stage";

    /** Nothing is written where the row says the same already: one event may touch every animal of a room. */
    private static final String SAVE = """
            INSERT INTO worklist_entry AS kept (organisation_id, animal_id, form, label, room_id, room_name, urgency,
                headline, worse, compared_look, reasons, tasks, more_from, act_rank, due_from, due_until, work_place,
                isolation, stage, rounds_rank)
            VALUES (:organisationId, :animalId, :form, :label, :roomId, :roomName, :urgency,
                :headline, :worse, :comparedLook, CAST(:reasons AS jsonb), CAST(:tasks AS jsonb), :moreFrom, :actRank,
                :dueFrom, :dueUntil, :workPlace, :isolation, :stage, :roundsRank)
            ON CONFLICT (organisation_id, animal_id) DO UPDATE SET
                form = excluded.form, label = excluded.label, room_id = excluded.room_id,
                room_name = excluded.room_name, urgency = excluded.urgency, headline = excluded.headline,
                worse = excluded.worse, compared_look = excluded.compared_look, reasons = excluded.reasons,
                tasks = excluded.tasks, more_from = excluded.more_from, act_rank = excluded.act_rank,
                due_from = excluded.due_from, due_until = excluded.due_until, work_place = excluded.work_place,
                isolation = excluded.isolation, stage = excluded.stage, rounds_rank = excluded.rounds_rank
            WHERE kept IS DISTINCT FROM excluded""";

    private final JdbcClient jdbc;
    private final JsonMapper json;

    WorklistRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    public void save(UUID organisationId, Entry entry) {
        jdbc.sql(SAVE)
                .param("organisationId", organisationId)
                .param("animalId", entry.animalId())
                .param("form", Entry.FORM)
                .param("label", entry.label().orElse(null))
                .param("roomId", entry.room().map(Room::id).orElse(null))
                .param("roomName", entry.room().map(Room::name).orElse(""))
                .param("urgency", entry.urgency().map(Urgency::code).orElse(null))
                .param("headline", entry.headline().orElse(null))
                .param("worse", entry.worse())
                .param("comparedLook", entry.comparedLook().orElse(null))
                .param("reasons", json.writeValueAsString(entry.reasons()))
                .param("tasks", json.writeValueAsString(entry.tasks()))
                .param("moreFrom", entry.moreFrom())
                .param("actRank", entry.actRank().number())
                .param("dueFrom", entry.dueFrom())
                .param("dueUntil", entry.dueUntil())
                .param("workPlace", entry.stop().workPlace().code())
                .param("isolation", entry.stop().isolation().code())
                .param("stage", entry.stop().stage().code())
                .param("roundsRank", RoundsRank.of(entry.stop()))
                .update();
    }

    @Transactional(propagation = Propagation.MANDATORY)
    public void remove(UUID organisationId, UUID animalId) {
        jdbc.sql("DELETE FROM worklist_entry WHERE organisation_id = ? AND animal_id = ?")
                .param(organisationId)
                .param(animalId)
                .update();
    }

    /** Those that have to be seen to, in the order of the list, from after the place on. */
    @Transactional(readOnly = true)
    public List<Entry> listActNow(
            UUID organisationId, Only only, Optional<UUID> room, LocalDate asOf, Optional<ActPlace> after, int fetch) {
        inTheOrderOfAnIndex();
        List<Entry> found = new ArrayList<>();
        for (Only.Stretch stretch : only.stretches(asOf)) {
            if (found.size() < fetch) {
                actNow(organisationId, only, room, stretch, after, fetch - found.size())
                        .ifPresent(select -> found.addAll(read(select)));
            }
        }
        return found;
    }

    /** The rounds, in their order, from after the place on; with a day only those with something due on it. */
    @Transactional(readOnly = true)
    public List<Entry> listRounds(
            UUID organisationId, Optional<UUID> room, Optional<LocalDate> due, Optional<RoundsPlace> after, int fetch) {
        inTheOrderOfAnIndex();
        return read(rounds(organisationId, room, due, after, fetch));
    }

    /**
     * The rooms that animals of the organisation stand in, in the order of their ids. Each is found by a step through an
     * index, however many animals stand in it.
     */
    @Transactional(readOnly = true)
    public List<Room> listRooms(UUID organisationId, int fetch) {
        inTheOrderOfAnIndex();
        Select select = rooms(organisationId, fetch);
        return jdbc.sql(select.sql())
                .params(select.values())
                .query((row, number) -> new Room(row.getObject("room_id", UUID.class), text(row, "room_name")))
                .list();
    }

    static Select rooms(UUID organisationId, int fetch) {
        return new Select("""
                WITH RECURSIVE found AS (
                    (SELECT room_id, room_name FROM worklist_entry
                     WHERE organisation_id = :organisationId AND room_id IS NOT NULL
                     ORDER BY room_id LIMIT 1)
                    UNION ALL
                    SELECT next.room_id, next.room_name FROM found, LATERAL (
                        SELECT room_id, room_name FROM worklist_entry
                        WHERE organisation_id = :organisationId AND room_id > found.room_id
                        ORDER BY room_id LIMIT 1) AS next)
                SELECT room_id, room_name FROM found LIMIT :fetch""", Map.of("organisationId", organisationId, "fetch", fetch));
    }

    static Optional<Select> actNow(
            UUID organisationId,
            Only only,
            Optional<UUID> room,
            Only.Stretch stretch,
            Optional<ActPlace> after,
            int fetch) {
        ActPlace from = after.filter(place -> place.rank() >= stretch.first().number())
                .orElseGet(() -> ActPlace.before(stretch.first()));
        int last = stretch.last().number();
        if (from.rank() > last || from.rank() == last && from.day().isAfter(stretch.lastDay())) {
            return Optional.empty();
        }
        Map<String, Object> values = new HashMap<>();
        values.put("organisationId", organisationId);
        values.put("rank", from.rank());
        values.put("day", from.day());
        values.put("animalId", from.animalId());
        values.put("lastRank", last);
        values.put("lastDay", stretch.lastDay());
        values.put("fetch", fetch);
        room.ifPresent(id -> values.put("room", id));
        // The room is part of the order, not a filter: or the planner may pass over all other rooms.
        String column = room.isPresent() ? "room_id, " : "";
        String value = room.isPresent() ? ":room, " : "";
        String sql = "SELECT " + COLUMNS + " FROM worklist_entry WHERE organisation_id = :organisationId"
                + (only == Only.WORSE ? " AND worse" : "")
                + " AND (" + column + "act_rank, {day}, animal_id) > (" + value + ":rank, :day, :animalId)"
                + " AND (" + column + "act_rank, {day}) <= (" + value + ":lastRank, :lastDay)"
                + " ORDER BY " + column + "act_rank, {day}, animal_id LIMIT :fetch";
        return Optional.of(new Select(sql.replace("{day}", only.day()), values));
    }

    static Select rounds(
            UUID organisationId, Optional<UUID> room, Optional<LocalDate> due, Optional<RoundsPlace> after, int fetch) {
        RoundsPlace from = after.orElse(RoundsPlace.BEFORE_ALL);
        Map<String, Object> values = new HashMap<>();
        values.put("organisationId", organisationId);
        values.put("rank", from.rank());
        values.put("animalId", from.animalId());
        values.put("fetch", fetch);
        if (room.isEmpty()) {
            values.put("place", RoundsRank.place(from.rank()));
        }
        due.ifPresent(day -> values.put("due", day));
        room.ifPresentOrElse(id -> values.put("room", id), () -> values.put("roomName", from.roomName()));
        String order = room.isPresent()
                ? "room_id, rounds_rank, animal_id"
                : "rounds_place, room_name, rounds_rank, animal_id";
        String place = room.isPresent() ? ":room, :rank, :animalId" : ":place, :roomName, :rank, :animalId";
        String sql = "SELECT " + COLUMNS + " FROM worklist_entry WHERE organisation_id = :organisationId"
                + " AND (" + order + ") > (" + place + ")"
                + (room.isPresent() ? " AND room_id <= :room" : "")
                + (due.isPresent() ? " AND due_from <= :due" : "")
                + " ORDER BY " + order + " LIMIT :fetch";
        return new Select(sql, values);
    }

    /**
     * Without figures about a table that has just been filled, the planner takes an organisation to be small and would
     * fetch and sort all of it for each page. Every list here has an index in its own order, so sorting is never right.
     */
    void inTheOrderOfAnIndex() {
        jdbc.sql("SELECT set_config('enable_sort', 'off', true), set_config('enable_incremental_sort', 'off', true)")
                .query((row, number) -> number)
                .list();
    }

    private List<Entry> read(Select select) {
        return jdbc.sql(select.sql()).params(select.values()).query(this::entry).list();
    }

    private Entry entry(ResultSet row, int number) throws SQLException {
        return new Entry(
                row.getObject("animal_id", UUID.class),
                Optional.ofNullable(row.getString("label")),
                Optional.ofNullable(row.getObject("room_id", UUID.class))
                        .map(id -> new Room(id, text(row, "room_name"))),
                Optional.ofNullable(row.getString("urgency")).flatMap(Urgency::find),
                Optional.ofNullable(row.getString("headline")),
                row.getBoolean("worse"),
                Optional.ofNullable(row.getObject("compared_look", UUID.class)),
                json.readValue(row.getString("reasons"), REASONS),
                json.readValue(row.getString("tasks"), TASKS),
                row.getObject("more_from", LocalDate.class),
                ActRank.values()[row.getInt("act_rank")],
                row.getObject("due_from", LocalDate.class),
                row.getObject("due_until", LocalDate.class),
                new RoundsOrder.Stop(
                        WorkPlace.find(row.getString("work_place")).orElseThrow(),
                        Isolation.find(row.getString("isolation")).orElseThrow(),
                        Stage.find(row.getString("stage")).orElseThrow()));
    }

    private static String text(ResultSet row, String column) {
        try {
            return row.getString(column);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A query and what stands for its names. */
    record Select(String sql, Map<String, Object> values) {}
}
