-- Photographs and laboratory reports of an animal. Rows are added and read, never changed. Pictures are those that this
-- service wrote itself, from the pixels of what was sent; reports are kept as they were sent.
CREATE TABLE attachment (
    organisation_id uuid NOT NULL REFERENCES organisation,
    id uuid NOT NULL,
    animal_id uuid NOT NULL,
    -- what it is about; the animal alone where neither is named
    assessment_id uuid,
    sample_id uuid,
    -- which of the assessment's findings it shows
    finding text,
    caption text,
    taken_at timestamptz,
    recorded_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL,
    media_type text NOT NULL CHECK (media_type IN ('image/jpeg', 'application/pdf')),
    -- of a picture, in pixels
    width integer CHECK (width > 0),
    height integer CHECK (height > 0),
    -- of a report
    pages integer CHECK (pages > 0),
    content bytea NOT NULL,
    byte_count integer NOT NULL CHECK (byte_count = octet_length(content)),
    -- a copy from a backup is checked by it too
    sha256 bytea NOT NULL CHECK (sha256 = sha256(content)),
    thumbnail bytea,
    PRIMARY KEY (organisation_id, id),
    FOREIGN KEY (organisation_id, animal_id) REFERENCES animal,
    FOREIGN KEY (organisation_id, recorded_by) REFERENCES person,
    FOREIGN KEY (organisation_id, animal_id, assessment_id) REFERENCES assessment (organisation_id, animal_id, id),
    FOREIGN KEY (organisation_id, animal_id, sample_id) REFERENCES sample (organisation_id, animal_id, id),
    CHECK (assessment_id IS NULL OR sample_id IS NULL),
    CHECK (finding IS NULL OR assessment_id IS NOT NULL),
    CHECK ((media_type = 'image/jpeg') = (width IS NOT NULL AND height IS NOT NULL AND thumbnail IS NOT NULL)),
    CHECK ((media_type = 'application/pdf') = (pages IS NOT NULL))
);

-- Both kinds are packed already: trying to pack them again costs time and saves nothing.
ALTER TABLE attachment ALTER COLUMN content SET STORAGE EXTERNAL;
ALTER TABLE attachment ALTER COLUMN thumbnail SET STORAGE EXTERNAL;

CREATE INDEX attachment_of_animal ON attachment (organisation_id, animal_id, id);

-- From then on it is not shown any more. That it was there, of what and by whom, still is.
CREATE TABLE attachment_withdrawal (
    organisation_id uuid NOT NULL,
    attachment_id uuid NOT NULL,
    reason text NOT NULL,
    withdrawn_by uuid NOT NULL,
    withdrawn_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, attachment_id),
    FOREIGN KEY (organisation_id, attachment_id) REFERENCES attachment,
    FOREIGN KEY (organisation_id, withdrawn_by) REFERENCES person
);
