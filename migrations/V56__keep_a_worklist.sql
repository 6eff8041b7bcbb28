-- One row for each animal in care, with what the two work lists say of it. It holds dates and never what is true on a
-- day: a row stays right until something is recorded. It can be made again from the other tables at any time.
CREATE TABLE worklist_entry (
    organisation_id uuid NOT NULL REFERENCES organisation,
    animal_id uuid NOT NULL,
    -- which way of making entries made it; a greater one makes it again
    form smallint NOT NULL,
    label text,
    room_id uuid,
    -- '' where there is none; sorted by its bytes, the same on every machine
    room_name text COLLATE "C" NOT NULL,
    urgency text CHECK (urgency IN ('stat', 'asap', 'urgent', 'routine')),
    headline text,
    worse boolean NOT NULL,
    compared_look uuid,
    reasons jsonb NOT NULL,
    -- the first open tasks, and when the first of those that are left out is due
    tasks jsonb NOT NULL,
    more_from date NOT NULL,
    -- 0 stat, 1 asap, 2 urgent or not looked at, 3 routine but worse than at the look before, 4 the others
    act_rank smallint NOT NULL CHECK (act_rank BETWEEN 0 AND 4),
    -- The earliest first and the earliest last day of all open tasks. 9999-12-31 where nothing is open: a value that
    -- comes after every date, because a row comparison with NULL would be neither true nor false and lose the row.
    due_from date NOT NULL,
    due_until date NOT NULL,
    work_place text NOT NULL,
    isolation text NOT NULL,
    stage text NOT NULL,
    -- by place, isolation, stage
    rounds_rank smallint NOT NULL,
    PRIMARY KEY (organisation_id, animal_id),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal
);

-- Every page of every list is a stretch of one of these.
CREATE INDEX worklist_by_urgency ON worklist_entry (organisation_id, act_rank, due_from, animal_id);
CREATE INDEX worklist_by_delay ON worklist_entry (organisation_id, act_rank, due_until, animal_id);
CREATE INDEX worklist_worse ON worklist_entry (organisation_id, act_rank, due_from, animal_id) WHERE worse;
CREATE INDEX worklist_of_room_worse ON worklist_entry (organisation_id, room_id, act_rank, due_from, animal_id)
    WHERE worse;
CREATE INDEX worklist_of_room_by_urgency ON worklist_entry (organisation_id, room_id, act_rank, due_from, animal_id);
CREATE INDEX worklist_of_room_by_delay ON worklist_entry (organisation_id, room_id, act_rank, due_until, animal_id);
-- The due day last: those with nothing due are passed over within the index.
CREATE INDEX worklist_rounds ON worklist_entry (organisation_id, rounds_rank, room_name, animal_id, due_from);
CREATE INDEX worklist_rounds_of_room ON worklist_entry (organisation_id, room_id, rounds_rank, animal_id, due_from);

-- How far entries were made for the animals that were there before, in the order of their ids.
CREATE TABLE worklist_fill (
    organisation_id uuid PRIMARY KEY REFERENCES organisation,
    form smallint NOT NULL,
    filled_up_to uuid NOT NULL,
    complete boolean NOT NULL
);
