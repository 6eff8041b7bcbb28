-- The animals that travelled or were surrendered together.
CREATE TABLE consignment (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    name text NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
    sender text,
    arrived_on date,
    notes text,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);

-- Everything but the key may be unknown on the doorstep.
CREATE TABLE animal (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    version bigint NOT NULL,
    consignment_id uuid,
    name text,
    tag text,
    species_name text,
    species_authority text,
    life_stage text NOT NULL CHECK (life_stage IN ('hatchling', 'juvenile', 'subadult', 'adult', 'unknown')),
    sex text NOT NULL CHECK (sex IN ('female', 'male', 'unknown')),
    declared_origin text CHECK (declared_origin IN ('W', 'R', 'D', 'C', 'F', 'U', 'I', 'O', 'X')),
    transponder text,
    arrived_on date,
    notes text,
    -- question id: yes, no or unknown
    evidence jsonb NOT NULL,
    papers jsonb NOT NULL,
    -- as given, with unit, scale and resolution; never changed
    first_weights jsonb NOT NULL,
    first_lengths jsonb NOT NULL,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    FOREIGN KEY (organisation_id, consignment_id) REFERENCES consignment,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);

CREATE INDEX animal_by_consignment ON animal (organisation_id, consignment_id, id);
