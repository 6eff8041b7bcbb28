-- What somebody noticed about an animal in passing, or did for it. Rows are added and read, never changed: a correction
-- is a new row that supersedes an old one. What was not said is null, and stays unknown.
CREATE TABLE diary_entry (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    recorded_by uuid NOT NULL,
    occurred_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL,
    -- the local date of what was noticed, in the organisation's zone
    local_date date NOT NULL,
    ate text,
    food text,
    drank text,
    stool text,
    urate text,
    seen text,
    demeanour text,
    cleaning text,
    mite_check text,
    note text,
    supersedes uuid,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    -- superseded once: two corrections of one entry would leave two truths
    UNIQUE (organisation_id, supersedes),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES diary_entry (organisation_id, animal_id, id),
    CHECK (supersedes <> id),
    CHECK (num_nonnulls(ate, drank, stool, urate, seen, demeanour, cleaning, mite_check, note) > 0),
    CHECK (food IS NULL OR ate IN ('all', 'some', 'none'))
);

CREATE INDEX diary_entry_by_day ON diary_entry (organisation_id, animal_id, local_date);
