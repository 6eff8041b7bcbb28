-- What a vet answered about an animal, in the vet's words. Nothing of it is ever changed: a later answer stands above it.
CREATE TABLE vet_answer (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    answered_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL,
    -- what was recorded up to this moment, its writer had seen
    seen_up_to timestamptz NOT NULL,
    saw_animal text NOT NULL CHECK (saw_animal IN ('examined', 'heard-of', 'read-only')),
    urgency text CHECK (urgency IN ('routine', 'urgent', 'asap', 'stat')),
    isolation text CHECK (isolation IN ('standard', 'strict')),
    findings jsonb NOT NULL,
    tests jsonb NOT NULL,
    rulings jsonb NOT NULL,
    instructions text,
    quarantine_until date,
    approves_release boolean,
    next_visit date,
    words text,
    writer_name text NOT NULL CHECK (writer_name <> ''),
    writer_practice text NOT NULL CHECK (writer_practice <> ''),
    writer_licence text NOT NULL CHECK (writer_licence <> ''),
    writer_contact text,
    supersedes uuid,
    -- who wrote it with an account; nobody where it came by a link
    recorded_by uuid,
    link_id uuid,
    -- an answer by a clinician's account, or by a link that a clinician's account gave out, is confirmed from the start
    confirmed_from_start boolean NOT NULL,
    -- of an answer by a link: its key and what was sent with it, so that sending twice keeps one
    key_sha256 text,
    content_sha256 text,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, supersedes) REFERENCES vet_answer (organisation_id, animal_id, id),
    CHECK ((recorded_by IS NULL) <> (link_id IS NULL)),
    CHECK (recorded_by IS NULL OR confirmed_from_start),
    CHECK ((key_sha256 IS NULL) = (content_sha256 IS NULL)),
    CHECK (key_sha256 IS NULL OR link_id IS NOT NULL),
    CHECK (seen_up_to <= recorded_at),
    CHECK (supersedes <> id)
);

CREATE UNIQUE INDEX vet_answer_superseded_once ON vet_answer (organisation_id, supersedes) WHERE supersedes IS NOT NULL;
CREATE UNIQUE INDEX vet_answer_sent_once ON vet_answer (organisation_id, link_id, key_sha256, content_sha256)
    WHERE key_sha256 IS NOT NULL;

-- A clinician of the organisation vouches for the writer of an answer that came by a link of somebody else.
CREATE TABLE vet_answer_confirmation (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    answer_id uuid NOT NULL,
    note text,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, id),
    UNIQUE (organisation_id, animal_id, answer_id),
    FOREIGN KEY (organisation_id, animal_id, answer_id) REFERENCES vet_answer (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person
);
