-- Messages written in the transaction that made them true; a row leaves once the bus has it.
CREATE TABLE outbox (
  seq          INTEGER PRIMARY KEY,
  id           TEXT    NOT NULL UNIQUE,
  type         TEXT    NOT NULL,
  body         TEXT    NOT NULL,
  created_at   INTEGER NOT NULL,
  available_at INTEGER NOT NULL,
  attempts     INTEGER NOT NULL DEFAULT 0,
  last_error   TEXT
) STRICT;
CREATE INDEX outbox_due ON outbox (available_at, seq);

-- Messages whose effect is already in this store.
CREATE TABLE inbox (
  consumer   TEXT    NOT NULL,
  message_id TEXT    NOT NULL,
  claimed_at INTEGER NOT NULL,
  PRIMARY KEY (consumer, message_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX inbox_by_age ON inbox (claimed_at);
