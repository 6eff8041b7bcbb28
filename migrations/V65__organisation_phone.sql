-- Whom to call, as it is dialled: it stands on the cards at the cages and on what a vet reads. Null where nobody said.
ALTER TABLE organisation
    ADD COLUMN phone text CHECK (length(phone) BETWEEN 1 AND 60);
