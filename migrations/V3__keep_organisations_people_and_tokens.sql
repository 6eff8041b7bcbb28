CREATE TABLE organisation (
    organisation_id uuid PRIMARY KEY,
    version bigint NOT NULL,
    name text NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
    -- IANA name: dates are meant in this zone
    zone text NOT NULL,
    -- the one the first start made, whose administrator's token lies in the data folder
    made_at_first_start boolean NOT NULL,
    recorded_at timestamptz NOT NULL
);

CREATE UNIQUE INDEX organisation_of_the_first_start ON organisation (made_at_first_start) WHERE made_at_first_start;

CREATE TABLE person (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    version bigint NOT NULL,
    name text NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
    keeper boolean NOT NULL,
    clinician boolean NOT NULL,
    administrator boolean NOT NULL,
    active boolean NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id)
);

-- Of a token only its SHA-256 is kept: it is 256 random bits, so a slow hash would add nothing.
CREATE TABLE api_token (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    version bigint NOT NULL,
    person_id uuid NOT NULL,
    issued_by uuid NOT NULL,
    label text NOT NULL CHECK (length(label) BETWEEN 1 AND 100),
    hint text NOT NULL,
    token_hash bytea NOT NULL CHECK (octet_length(token_hash) = 32),
    -- null: does not expire (the first start's only)
    expires_at timestamptz,
    revoked_at timestamptz,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, token_hash),
    FOREIGN KEY (organisation_id, person_id) REFERENCES person,
    FOREIGN KEY (organisation_id, issued_by) REFERENCES person
);
