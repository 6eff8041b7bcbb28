-- Where newcomers are kept apart, what happened there, and how it ended. A room is one air space and one set of tools.
CREATE TABLE room (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    version bigint NOT NULL,
    name text NOT NULL CHECK (length(name) BETWEEN 1 AND 100),
    -- never changed: making residents of a whole room would end the quarantine of all in it
    kind text NOT NULL CHECK (kind IN ('quarantine', 'residents')),
    notes text,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);

CREATE UNIQUE INDEX room_by_name ON room (organisation_id, lower(name));

-- An animal came to stand in a room, or is no longer kept here. Where it stands is its last row that was not withdrawn;
-- the days of those never fall.
CREATE TABLE placement (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    kind text NOT NULL CHECK (kind IN ('placed', 'left', 'withdrawn')),
    room_id uuid,
    on_day date NOT NULL,
    because text,
    explained boolean,
    reason text,
    about uuid,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    UNIQUE (organisation_id, about),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, room_id) REFERENCES room,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, about) REFERENCES placement (organisation_id, animal_id, id),
    CHECK ((kind = 'placed') = (room_id IS NOT NULL)),
    CHECK ((kind = 'left') = (because IS NOT NULL)),
    CHECK ((kind = 'withdrawn') = (about IS NOT NULL)),
    CHECK ((because IS NOT DISTINCT FROM 'died') = (explained IS NOT NULL))
);

-- What the clock of a room is read from. One that was a mistake is withdrawn by another of the same day, and counts for
-- nothing.
CREATE TABLE clock_event (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    room_id uuid NOT NULL,
    on_day date NOT NULL,
    kind text NOT NULL CHECK (kind IN ('placed', 'left', 'occurred', 'vet-spoke', 'treatment-ended', 'lengthened',
                                       'vet-decided', 'withdrawn')),
    animal_id uuid,
    cause text,
    about uuid,
    ruling text CHECK (ruling IN ('restarts', 'restarts-after-treatment', 'goes-on', 'was-nothing')),
    days int CHECK (days BETWEEN 0 AND 3650),
    reason text,
    -- how long the animal is kept apart at least, as it was worked out on being placed
    minimum_stay jsonb,
    -- the record that it follows from, and which part of it
    source_kind text CHECK (source_kind IN ('placement', 'assessment', 'result')),
    source_id uuid,
    source_part text,
    recorded_by uuid,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, room_id, id),
    FOREIGN KEY (organisation_id, room_id) REFERENCES room,
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, room_id, about) REFERENCES clock_event (organisation_id, room_id, id),
    CHECK ((source_kind IS NULL) = (source_id IS NULL)),
    CHECK (recorded_by IS NOT NULL OR source_id IS NOT NULL),
    CHECK (kind NOT IN ('placed', 'left') OR animal_id IS NOT NULL),
    CHECK ((kind = 'placed') = (minimum_stay IS NOT NULL)),
    CHECK ((kind = 'occurred') = (cause IS NOT NULL)),
    CHECK ((kind IN ('vet-spoke', 'treatment-ended', 'withdrawn')) = (about IS NOT NULL)),
    CHECK ((kind = 'vet-spoke') = (ruling IS NOT NULL)),
    CHECK ((kind IN ('lengthened', 'vet-decided')) = (days IS NOT NULL)),
    CHECK (kind NOT IN ('lengthened', 'vet-decided', 'withdrawn') OR reason IS NOT NULL),
    CHECK (about <> id)
);

-- A clock is read from the day on which its room was last empty: that day is found in the first index alone, the events
-- from it on in the second.
CREATE INDEX clock_event_who_stood ON clock_event (organisation_id, room_id, on_day, id, kind, animal_id, about)
    WHERE kind IN ('placed', 'left', 'withdrawn');
CREATE INDEX clock_event_by_day ON clock_event (organisation_id, room_id, on_day, id);
CREATE INDEX clock_event_by_animal ON clock_event (organisation_id, animal_id, id) WHERE animal_id IS NOT NULL;
CREATE UNIQUE INDEX clock_event_withdrawn_once ON clock_event (organisation_id, about) WHERE kind = 'withdrawn';

-- How many days the organisation keeps newcomers apart, where that is longer than the policy. The last row counts.
CREATE TABLE quarantine_setting (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    version bigint NOT NULL,
    -- origin: days
    days jsonb NOT NULL,
    reason text,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, version),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);

-- Whether an authority holds the animal, as somebody stated it. The last row counts.
CREATE TABLE legal_hold (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    on_day date NOT NULL,
    state text NOT NULL CHECK (state IN ('held', 'released', 'none')),
    authority text,
    reference text,
    note text,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);

-- What a vet says about ending the quarantine of an animal. The last row counts.
CREATE TABLE release_approval (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    on_day date NOT NULL,
    approves boolean NOT NULL,
    note text,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);

-- A named person ended the quarantine of an animal, knowing what the document says.
CREATE TABLE release_decision (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    placement_id uuid NOT NULL,
    on_day date NOT NULL,
    document text NOT NULL,
    document_sha256 text NOT NULL CHECK (document_sha256 = encode(sha256(convert_to(document, 'UTF8')), 'hex')),
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, animal_id, placement_id) REFERENCES placement (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);
