-- What was measured and seen of the place an animal is kept in, on one round. Rows are added and read, never changed: a
-- correction is a new row that supersedes an old one.
CREATE TABLE enclosure_reading (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    recorded_by uuid NOT NULL,
    occurred_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL,
    -- the local date of occurred_at in the organisation's zone
    local_date date NOT NULL,
    supersedes uuid,
    -- as given: each value with its unit, and whether somebody stood by an unlikely one
    given jsonb NOT NULL CHECK (jsonb_typeof(given) = 'object'),
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    -- superseded once: two corrections of one reading would leave two truths
    UNIQUE (organisation_id, supersedes),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES enclosure_reading (organisation_id, animal_id, id),
    CHECK (supersedes <> id)
);
