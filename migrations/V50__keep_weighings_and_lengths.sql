-- One reading of one scale, as it was given and in grams. Rows are added and read, never changed: a correction is a new
-- row that supersedes an old one, or a weight that was given when the animal was registered.
CREATE TABLE weighing (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    occurred_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL,
    -- the local date of the weighing: changes are counted in days where the animal is kept
    local_date date NOT NULL,
    value numeric NOT NULL CHECK (value > 0),
    -- UCUM
    unit text NOT NULL,
    grams numeric NOT NULL CHECK (grams = value * CASE unit
        WHEN 'g' THEN 1
        WHEN 'kg' THEN 1000
        WHEN '[oz_av]' THEN 28.349523125
        WHEN '[lb_av]' THEN 453.59237
        ELSE 0
    END),
    -- the scale's smallest step, in the same unit
    resolution numeric CHECK (resolution > 0),
    scale text CHECK (length(scale) BETWEEN 1 AND 60),
    -- whoever read it stands by an unlikely value
    confirmed boolean NOT NULL,
    last_meal_at timestamptz CHECK (last_meal_at <= occurred_at),
    wet boolean NOT NULL,
    note text CHECK (length(note) BETWEEN 1 AND 4000),
    supersedes uuid,
    -- the place of a first weight in the animal's registration, from 0
    supersedes_first int CHECK (supersedes_first BETWEEN 0 AND 19),
    recorded_by uuid NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    -- superseded once: two corrections of one weighing would leave two truths
    UNIQUE (organisation_id, supersedes),
    UNIQUE (organisation_id, animal_id, supersedes_first),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES weighing (organisation_id, animal_id, id),
    CHECK (supersedes <> id),
    CHECK (supersedes IS NULL OR supersedes_first IS NULL)
);

CREATE INDEX weighing_by_time ON weighing (organisation_id, animal_id, occurred_at);

-- One length of one part of an animal, as it was given and in millimetres; kept in the same manner.
CREATE TABLE length_measurement (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    occurred_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL,
    local_date date NOT NULL,
    part text NOT NULL CHECK (part IN ('snout-vent', 'tail', 'total', 'tail-root-width')),
    -- a tail can be missing
    value numeric NOT NULL CHECK (value > 0 OR value = 0 AND part = 'tail'),
    -- UCUM
    unit text NOT NULL CHECK (unit IN ('mm', 'cm', '[in_i]')),
    millimetres numeric NOT NULL CHECK (millimetres = value * CASE unit
        WHEN 'mm' THEN 1
        WHEN 'cm' THEN 10
        ELSE 25.4
    END),
    resolution numeric CHECK (resolution > 0),
    tool text CHECK (length(tool) BETWEEN 1 AND 60),
    confirmed boolean NOT NULL,
    note text CHECK (length(note) BETWEEN 1 AND 4000),
    supersedes uuid,
    -- the place of a first length in the animal's registration, from 0
    supersedes_first int CHECK (supersedes_first BETWEEN 0 AND 19),
    recorded_by uuid NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    UNIQUE (organisation_id, supersedes),
    UNIQUE (organisation_id, animal_id, supersedes_first),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES length_measurement (organisation_id, animal_id, id),
    CHECK (supersedes <> id),
    CHECK (supersedes IS NULL OR supersedes_first IS NULL)
);

CREATE INDEX length_measurement_by_time ON length_measurement (organisation_id, animal_id, occurred_at);
