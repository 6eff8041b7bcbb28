-- Append-only tables: rows are added and read, never changed or removed. Which tables these are is listed in
-- afterMigrate.sql, which also puts this trigger on them. It guards where the service's own role owns the tables; where
-- it does not, the service has no right to change them in the first place.
CREATE FUNCTION refuse_change() RETURNS trigger
    LANGUAGE plpgsql
AS $$
BEGIN
    RAISE EXCEPTION 'table "%" is append-only: % is refused', TG_TABLE_NAME, TG_OP
        USING ERRCODE = 'insufficient_privilege',
              HINT = 'Add a row that supersedes the old one.';
END
$$;
