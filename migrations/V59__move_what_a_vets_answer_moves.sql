-- A vet's answer moves clocks and speaks of release. Its writer may have no account, so nobody here recorded what
-- follows; the answer says who wrote it.
ALTER TABLE clock_event DROP CONSTRAINT clock_event_source_kind_check;
ALTER TABLE clock_event ADD CONSTRAINT clock_event_source_kind_check
    CHECK (source_kind IN ('placement', 'assessment', 'result', 'vet-answer'));

-- Not certain to be a vet's: such an event only raises.
ALTER TABLE clock_event ADD COLUMN unconfirmed boolean NOT NULL DEFAULT false;
ALTER TABLE clock_event ADD CONSTRAINT clock_event_only_answers_are_unconfirmed
    CHECK (NOT unconfirmed OR (source_kind = 'vet-answer' AND kind IN ('vet-spoke', 'lengthened', 'withdrawn')
        AND (ruling IS NULL OR ruling IN ('restarts', 'restarts-after-treatment'))));

CREATE INDEX clock_event_by_answer ON clock_event (organisation_id, source_id) WHERE source_kind = 'vet-answer';

-- Without approves: a later answer takes back what the vet had said of it.
ALTER TABLE release_approval ALTER COLUMN approves DROP NOT NULL;
ALTER TABLE release_approval ALTER COLUMN recorded_by DROP NOT NULL;
ALTER TABLE release_approval ADD COLUMN answer_id uuid;
ALTER TABLE release_approval ADD COLUMN answered_by text;
ALTER TABLE release_approval ADD CONSTRAINT release_approval_says_by_whom
    CHECK (recorded_by IS NOT NULL OR (answer_id IS NOT NULL AND answered_by IS NOT NULL));
ALTER TABLE release_approval ADD CONSTRAINT release_approval_only_answers_take_back
    CHECK (approves IS NOT NULL OR answer_id IS NOT NULL);
ALTER TABLE release_approval ADD FOREIGN KEY (organisation_id, animal_id, answer_id)
    REFERENCES vet_answer (organisation_id, animal_id, id);
