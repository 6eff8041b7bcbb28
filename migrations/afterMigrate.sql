-- Flyway runs this after every migration run. It gives the service's role its rights, and append-only tables their
-- trigger. A new table is one new line in one of the two lists; a table in neither is closed to the service.
DO $$
DECLARE
    append_only CONSTANT text[] := ARRAY[
        'assessment',
        'checklist_in_use',
        'demo_organisation',
        'enclosure_reading',
        'placement',
        'clock_event',
        'quarantine_setting',
        'legal_hold',
        'release_approval',
        'release_decision',
        'weighing',
        'length_measurement',
        'sample',
        'sample_step',
        'sample_result',
        'sampling_setting',
        'diary_entry',
        'vet_answer',
        'vet_answer_confirmation',
        'share_link',
        'share_link_revocation',
        'share_link_opening',
        'report',
        'attachment',
        'attachment_withdrawal'
    ]::text[];
    editable CONSTANT text[] := ARRAY[
        'idempotency_reply',
        'organisation',
        'person',
        'api_token',
        'consignment',
        'animal',
        'room',
        'calendar_link',
        'calendar_reminder',
        'worklist_entry',
        'worklist_fill',
        'report_people',
        'spring_session',
        'spring_session_attributes',
        'sign_in_link',
        'sign_in_password'
    ]::text[];
    service CONSTANT name := '${service_role}';
    listed text;
BEGIN
    FOREACH listed IN ARRAY append_only LOOP
        IF listed = ANY (editable) THEN
            RAISE EXCEPTION 'table "%" is in both lists of afterMigrate.sql', listed;
        END IF;
        IF NOT EXISTS (SELECT FROM pg_trigger WHERE tgrelid = listed::regclass AND tgname = 'append_only') THEN
            -- Per statement: also refuses what would hit no row, and ON CONFLICT DO UPDATE.
            EXECUTE format('CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON %I '
                           'FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', listed);
        END IF;
    END LOOP;

    -- Where the service's role owns the tables, rights mean nothing, and the triggers alone guard.
    IF service = current_user THEN
        RETURN;
    END IF;

    -- Before PostgreSQL 15 the schema "public" is not its owner's to give, and everybody has it.
    IF NOT has_schema_privilege(service, current_schema(), 'USAGE') THEN
        EXECUTE format('GRANT USAGE ON SCHEMA %I TO %I', current_schema(), service);
    END IF;
    FOREACH listed IN ARRAY append_only || editable LOOP
        EXECUTE format('REVOKE ALL ON TABLE %I FROM %I', listed, service);
        EXECUTE format('GRANT SELECT, INSERT ON TABLE %I TO %I', listed, service);
    END LOOP;
    FOREACH listed IN ARRAY editable LOOP
        EXECUTE format('GRANT UPDATE, DELETE ON TABLE %I TO %I', listed, service);
    END LOOP;
END
$$;
