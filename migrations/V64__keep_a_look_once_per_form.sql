-- A look that was made with a form is kept once, however often and from whichever session the form arrives: a reply can
-- be lost, and the person can have to sign in again before the form is sent again. Of what arrived with the form the
-- SHA-256 is kept, so that a form that was changed in between is not taken for the same.
ALTER TABLE assessment
    ADD COLUMN form_key uuid,
    ADD COLUMN form_sha256 text CHECK (form_sha256 ~ '^[0-9a-f]{64}$'),
    ADD CHECK ((form_key IS NULL) = (form_sha256 IS NULL)),
    ADD UNIQUE (organisation_id, observer_id, animal_id, form_key);
