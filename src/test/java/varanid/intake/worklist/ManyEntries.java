package varanid.intake.worklist;

import java.time.LocalDate;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Puts many animals with their entries into the tables, as a large keeping has them: a tenth has something due, some of
 * that overdue; 3 % are urgent or worse. They stand in rooms in no order.
 */
final class ManyEntries {

    private ManyEntries() {}

    static UUID room(int number) {
        return new UUID(0, number);
    }

    static void insert(JdbcClient jdbc, UUID organisationId, UUID personId, int animals, int rooms, LocalDate today) {
        jdbc.sql("""
                        INSERT INTO animal (organisation_id, id, version, life_stage, sex, evidence, papers,
                            first_weights, first_lengths, recorded_by, recorded_at)
                        SELECT :organisationId, gen_random_uuid(), 0, 'adult', 'unknown', '{}', '[]', '[]', '[]',
                            :personId, now()
                        FROM generate_series(1, :animals)""")
                .param("organisationId", organisationId)
                .param("personId", personId)
                .param("animals", animals)
                .update();
        jdbc.sql("""
                        WITH numbered AS (
                            SELECT id, row_number() OVER (ORDER BY id) AS n FROM animal
                            WHERE organisation_id = :organisationId),
                        dated AS (
                            SELECT id, n, n * 7919 % :rooms AS room, n * 104729 % 1000 AS dice,
                                :today::date + CASE WHEN n % 10 = 0 THEN -(n / 10 % 30)::int ELSE (1 + n % 13)::int END
                                    AS due
                            FROM numbered)
                        INSERT INTO worklist_entry (organisation_id, animal_id, form, label, room_id, room_name, urgency,
                            headline, worse, compared_look, reasons, tasks, more_from, act_rank, due_from, due_until,
                            work_place, isolation, stage, rounds_rank)
                        SELECT :organisationId, id, 1, 'Animal ' || n,
                            ('00000000-0000-0000-0000-' || lpad(to_hex(room), 12, '0'))::uuid,
                            'Room ' || lpad(room::text, 3, '0'),
                            CASE WHEN dice < 2 THEN 'stat' WHEN dice < 8 THEN 'asap' WHEN dice < 20 THEN 'urgent'
                                ELSE 'routine' END,
                            'Something that one line says of it', dice BETWEEN 15 AND 29, NULL,
                            '[{"code":"dull","words":"Slow, eyes half shut in the day"}]',
                            json_build_array(
                                json_build_object('kind', 'weighing', 'ordinal', 1, 'title', 'Weigh', 'due', due,
                                    'latest', due + 1),
                                json_build_object('kind', 're-look', 'ordinal', 2, 'title', 'Look again', 'due', due + 7,
                                    'latest', due + 8))::jsonb,
                            '9999-12-31',
                            CASE WHEN dice < 2 THEN 0 WHEN dice < 8 THEN 1 WHEN dice < 20 THEN 2 WHEN dice < 30 THEN 3
                                ELSE 4 END,
                            due, due + 1,
                            (ARRAY['residents', 'newcomers-without-signs', 'suspect', 'sick'])[1 + n % 4],
                            (ARRAY['standard', 'strict'])[1 + n / 4 % 2],
                            (ARRAY['unknown', 'hatchling', 'juvenile', 'subadult', 'adult'])[1 + n / 8 % 5],
                            n % 4 * 100 + n / 4 % 2 * 10 + n / 8 % 5
                        FROM dated""")
                .param("organisationId", organisationId)
                .param("rooms", rooms)
                .param("today", today)
                .update();
    }
}
