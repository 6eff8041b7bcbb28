-- The reply to a POST, stored in the transaction of its effect and kept for 24 hours.
-- The key is hashed; the reply is sealed with a key that only the sender of the request has.
CREATE TABLE idempotency_reply (
    organisation_id uuid NOT NULL,
    token_id uuid NOT NULL,
    key_hash bytea NOT NULL CHECK (octet_length(key_hash) = 32),
    request_hash bytea NOT NULL CHECK (octet_length(request_hash) = 32),
    sealed_reply bytea NOT NULL,
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (organisation_id, token_id, key_hash)
);

CREATE INDEX idempotency_reply_by_age ON idempotency_reply (recorded_at);
