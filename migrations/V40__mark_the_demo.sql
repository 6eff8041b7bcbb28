-- Which organisation is the demo, if any: the only one that the command --remove-demo removes. Append-only, so that
-- nothing the service does can ever point that command at another organisation.
CREATE TABLE demo_organisation (
    organisation_id uuid PRIMARY KEY REFERENCES organisation,
    -- there is one demo at most
    only_one boolean NOT NULL DEFAULT true UNIQUE CHECK (only_one)
);
