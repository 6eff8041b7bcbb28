-- A link that signs a person in once. Of its secret only the SHA-256 is kept: it is 256 random bits, so a slow hash
-- would add nothing.
CREATE TABLE sign_in_link (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    -- null: made by the start of the service, for who sits at the machine
    issued_by uuid,
    secret_hash bytea NOT NULL CHECK (octet_length(secret_hash) = 32),
    expires_at timestamptz NOT NULL,
    -- null: not used yet
    used_at timestamptz,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, secret_hash),
    FOREIGN KEY (organisation_id, person_id) REFERENCES person,
    FOREIGN KEY (organisation_id, issued_by) REFERENCES person
);

-- With what a person signs in where they have set a password.
CREATE TABLE sign_in_password (
    organisation_id uuid NOT NULL,
    person_id uuid NOT NULL,
    -- in small letters; nobody says to which organisation they sign in, so there is each address only once
    email text NOT NULL UNIQUE CHECK (email = lower(email) AND length(email) BETWEEN 3 AND 254),
    -- slow and salted, and begins with the name of how it was made
    password_hash text NOT NULL,
    -- wrong passwords since the last right one
    failures int NOT NULL CHECK (failures >= 0),
    changed_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, person_id),
    FOREIGN KEY (organisation_id, person_id) REFERENCES person
);
