-- Samples of an animal, what became of them and what a laboratory found. Rows are added and read, never changed: a
-- correction is a new row that supersedes an old one.
CREATE TABLE sample (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    -- the first of its corrections, or itself: steps and results belong to that one, so they survive a correction
    first_id uuid NOT NULL,
    kind text NOT NULL CHECK (kind IN ('stool', 'urate', 'oral-swab', 'cloacal-swab', 'blood', 'skin-scraping',
                                       'shed-skin', 'parasite', 'other')),
    taken_at timestamptz NOT NULL,
    local_date date NOT NULL,
    passed_at timestamptz CHECK (passed_at <= taken_at),
    -- whole hours between passing and taking; null: nobody knows
    fresh_hours int CHECK (fresh_hours >= 0),
    methods text[] NOT NULL,
    laboratory text,
    storage text CHECK (storage IN ('cool', 'room', 'frozen', 'preserved')),
    note text,
    supersedes uuid,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    UNIQUE (organisation_id, supersedes),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, first_id) REFERENCES sample (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES sample (organisation_id, animal_id, id),
    CHECK (supersedes <> id),
    CHECK ((supersedes IS NULL) = (first_id = id))
);

CREATE INDEX sample_by_animal ON sample (organisation_id, animal_id, id);

CREATE TABLE sample_step (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    sample_id uuid NOT NULL,
    step text NOT NULL CHECK (step IN ('sent', 'received', 'lost', 'unusable')),
    occurred_at timestamptz NOT NULL,
    local_date date NOT NULL,
    laboratory text,
    note text,
    supersedes uuid,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, sample_id, id),
    UNIQUE (organisation_id, supersedes),
    FOREIGN KEY (organisation_id, animal_id, sample_id) REFERENCES sample (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, sample_id, supersedes) REFERENCES sample_step (organisation_id, sample_id, id),
    CHECK (supersedes <> id)
);

CREATE INDEX sample_step_by_animal ON sample_step (organisation_id, animal_id, id);

CREATE TABLE sample_result (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    sample_id uuid NOT NULL,
    method text NOT NULL,
    outcome text NOT NULL CHECK (outcome IN ('negative', 'positive', 'equivocal', 'unusable')),
    -- agents, each with whether somebody called it significant
    found jsonb NOT NULL,
    -- the local day from which it is known
    reported_on date NOT NULL,
    laboratory text,
    -- what the laboratory wrote
    report text,
    supersedes uuid,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, sample_id, id),
    UNIQUE (organisation_id, supersedes),
    FOREIGN KEY (organisation_id, animal_id, sample_id) REFERENCES sample (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, sample_id, supersedes) REFERENCES sample_result (organisation_id, sample_id, id),
    CHECK (supersedes <> id),
    -- a positive one names what it found; of an equivocal one that may be suspected
    CHECK (outcome <> 'positive' OR found <> '[]'),
    CHECK (outcome IN ('positive', 'equivocal') OR found = '[]')
);

CREATE INDEX sample_result_by_animal ON sample_result (organisation_id, animal_id, id);

-- What an organisation assumes of infections and tests instead of what is shipped: the latest counts.
CREATE TABLE sampling_setting (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    -- counts up from 1
    version bigint NOT NULL CHECK (version > 0),
    figures jsonb NOT NULL,
    reason text NOT NULL,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, version),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);
