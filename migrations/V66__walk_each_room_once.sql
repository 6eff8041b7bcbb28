-- The rounds go room by room within a place, hatchlings before adults in each room: one that walks the list enters no room
-- twice for one place. rounds_rank is a place times ten and the stage.
ALTER TABLE worklist_entry ADD COLUMN rounds_place smallint NOT NULL GENERATED ALWAYS AS (rounds_rank / 10) STORED;

DROP INDEX worklist_rounds;
CREATE INDEX worklist_rounds
    ON worklist_entry (organisation_id, rounds_place, room_name, rounds_rank, animal_id, due_from);
