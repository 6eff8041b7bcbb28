-- Links that open one animal's summary, or a form for a vet's answer to it, without an account. Of the secret in them
-- only its SHA-256 is kept.
CREATE TABLE share_link (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    kind text NOT NULL CHECK (kind IN ('summary', 'reply')),
    recipient text NOT NULL CHECK (length(recipient) BETWEEN 1 AND 200),
    note text,
    hint text NOT NULL,
    secret_hash bytea NOT NULL CHECK (octet_length(secret_hash) = 32),
    -- to tell places apart among the openings of this link, and of no other
    salt bytea NOT NULL CHECK (octet_length(salt) = 16),
    -- whether what is answered through it counts as a vet's own: a clinician's account gave it out
    confirms boolean NOT NULL,
    expires_at timestamptz NOT NULL,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL CHECK (recorded_at < expires_at),
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    UNIQUE (organisation_id, secret_hash),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    CHECK (kind = 'reply' OR NOT confirms)
);

CREATE INDEX share_link_by_animal ON share_link (organisation_id, animal_id, id);

CREATE TABLE share_link_revocation (
    organisation_id uuid NOT NULL,
    link_id uuid NOT NULL,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, link_id),
    FOREIGN KEY (organisation_id, link_id) REFERENCES share_link,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);

CREATE TABLE share_link_opening (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    link_id uuid NOT NULL,
    opened_at timestamptz NOT NULL,
    what text NOT NULL CHECK (what IN ('html', 'pdf', 'json', 'fhir', 'reply-form', 'reply')),
    -- eight hexadecimal digits of a hash salted for this link: the same place, or another one, and no more
    place text NOT NULL CHECK (place ~ '^[0-9a-f]{8}$'),
    PRIMARY KEY (organisation_id, id),
    FOREIGN KEY (organisation_id, link_id) REFERENCES share_link
);

CREATE INDEX share_link_opening_by_link ON share_link_opening (organisation_id, link_id, id);
