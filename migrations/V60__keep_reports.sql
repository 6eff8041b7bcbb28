-- What the people around an animal told of it, at one time. Rows are added and read, never changed: a correction is a new
-- row that supersedes an old one.
CREATE TABLE report (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    recorded_by uuid NOT NULL,
    -- when it was told
    occurred_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL,
    -- the local date of occurred_at in the organisation's zone
    local_date date NOT NULL,
    supersedes uuid,
    -- what was told of the animal; nothing that is meant to say who somebody is
    told jsonb NOT NULL CHECK (jsonb_typeof(told) = 'object'),
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    -- superseded once: two corrections of one report would leave two truths
    UNIQUE (organisation_id, supersedes),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES report (organisation_id, animal_id, id),
    CHECK (supersedes <> id)
);

-- The people in a report: who told it, who was bitten, who lives there, who decides and pays, whom to call. Beside the
-- report, so that it can be removed when somebody asks for it: then what was said is gone, and that it is gone stays.
CREATE TABLE report_people (
    organisation_id uuid NOT NULL,
    report_id uuid NOT NULL,
    said jsonb CHECK (jsonb_typeof(said) = 'object'),
    removed_at timestamptz,
    removed_by uuid,
    PRIMARY KEY (organisation_id, report_id),
    FOREIGN KEY (organisation_id, report_id) REFERENCES report,
    FOREIGN KEY (organisation_id, removed_by) REFERENCES person,
    CHECK ((said IS NULL) = (removed_at IS NOT NULL)),
    CHECK ((removed_by IS NULL) = (removed_at IS NULL))
);
