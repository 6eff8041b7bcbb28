-- One person's look at one animal, as it was then. Rows are added and read, never changed: a correction is a new row
-- that supersedes an old one.
CREATE TABLE assessment (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    observer_id uuid NOT NULL,
    occurred_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL,
    -- the local date of the look, and the findings that a condition excused on it: once a day each
    local_date date NOT NULL,
    excused text[] NOT NULL,
    checklist_id text NOT NULL,
    checklist_version int NOT NULL,
    checklist_sha256 text NOT NULL CHECK (checklist_sha256 ~ '^[0-9a-f]{64}$'),
    urgency text NOT NULL,
    isolation text,
    settled boolean NOT NULL,
    supersedes uuid,
    -- what was answered and the whole result, in canonical form, served byte for byte
    document text NOT NULL,
    document_sha256 text NOT NULL CHECK (document_sha256 = encode(sha256(convert_to(document, 'UTF8')), 'hex')),
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    -- superseded once: two corrections of one assessment would leave two truths
    UNIQUE (organisation_id, supersedes),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, observer_id) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES assessment (organisation_id, animal_id, id),
    CHECK (supersedes <> id)
);

-- The file of each checklist version that the organisation has scored by: a version means one thing for ever.
CREATE TABLE checklist_in_use (
    organisation_id uuid NOT NULL REFERENCES organisation,
    checklist_id text NOT NULL,
    checklist_version int NOT NULL,
    checklist_sha256 text NOT NULL CHECK (checklist_sha256 = encode(sha256(convert_to(file, 'UTF8')), 'hex')),
    file text NOT NULL,
    first_used_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, checklist_id, checklist_version)
);
