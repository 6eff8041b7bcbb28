-- Addresses at which somebody's calendar program fetches reminders. Of the secret in them only its SHA-256 is kept.
CREATE TABLE calendar_link (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    version bigint NOT NULL,
    person_id uuid NOT NULL,
    -- null: of all animals
    animal_id uuid,
    form text NOT NULL CHECK (form IN ('events', 'todos')),
    label text NOT NULL CHECK (length(label) BETWEEN 1 AND 100),
    hint text NOT NULL,
    secret_hash bytea NOT NULL CHECK (octet_length(secret_hash) = 32),
    -- the day in the organisation's zone: enough to see which link is dead, and written once a day only
    last_fetched_on date,
    revoked_at timestamptz,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, secret_hash),
    FOREIGN KEY (organisation_id, person_id) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal
);

-- What calendars were told of each task, to tell them what changed since. The plans stand elsewhere.
CREATE TABLE calendar_reminder (
    organisation_id uuid NOT NULL,
    uid text NOT NULL,
    animal_id uuid NOT NULL,
    case_id uuid NOT NULL,
    kind text NOT NULL,
    ordinal int NOT NULL CHECK (ordinal >= 1),
    due_on date NOT NULL,
    latest_on date NOT NULL CHECK (latest_on >= due_on),
    summary text NOT NULL,
    description text NOT NULL,
    priority int NOT NULL CHECK (priority BETWEEN 0 AND 9),
    state text NOT NULL CHECK (state IN ('planned', 'done', 'cancelled')),
    sequence int NOT NULL CHECK (sequence >= 0),
    changed_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, uid),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal
);

CREATE INDEX calendar_reminder_by_animal ON calendar_reminder (organisation_id, animal_id);
