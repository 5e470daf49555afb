-- One row per accepted order; what a caller was told about it never changes here without a
-- history row. Instants are UTC milliseconds.
CREATE TABLE orders (
  seq           INTEGER PRIMARY KEY,
  order_number  TEXT    NOT NULL UNIQUE,
  revision      INTEGER NOT NULL,
  state         TEXT    NOT NULL CHECK (state IN ('confirmed', 'planned', 'labelled', 'parked')),
  needed_by     TEXT    NOT NULL,
  ship_to       TEXT    NOT NULL,
  building      TEXT    NOT NULL,
  summary       TEXT    NOT NULL,
  piece_count   INTEGER NOT NULL,
  roll_count    INTEGER,
  label_count   INTEGER,
  accepted_at   INTEGER NOT NULL,
  planned_at    INTEGER,
  labelled_at   INTEGER,
  parked_at     INTEGER,
  park_reasons  TEXT,
  -- Counts every change of any order; readers ask for what came after the last they saw.
  change_no     INTEGER NOT NULL UNIQUE,
  changed_at    INTEGER NOT NULL,
  -- The reconciler's notes: in which run of the process it was last announced, when, how often.
  announced_run TEXT    NOT NULL,
  announced_at  INTEGER NOT NULL,
  announcements INTEGER NOT NULL
) STRICT;
CREATE INDEX orders_open ON orders (announced_at) WHERE state IN ('confirmed', 'planned');

-- A frozen take-off: the request, sizing's whole answer, and what the workers were told.
CREATE TABLE revision (
  order_seq   INTEGER NOT NULL REFERENCES orders (seq),
  revision    INTEGER NOT NULL,
  request     TEXT    NOT NULL,
  take_off    TEXT    NOT NULL,
  confirmed   TEXT    NOT NULL,
  accepted_at INTEGER NOT NULL,
  PRIMARY KEY (order_seq, revision)
) STRICT;

-- Every piece id ever issued.
CREATE TABLE piece (
  piece_id  TEXT    NOT NULL PRIMARY KEY,
  order_seq INTEGER NOT NULL REFERENCES orders (seq),
  revision  INTEGER NOT NULL,
  mark      TEXT    NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX piece_by_order ON piece (order_seq);

CREATE TABLE history (
  seq       INTEGER PRIMARY KEY,
  order_seq INTEGER NOT NULL REFERENCES orders (seq),
  revision  INTEGER NOT NULL,
  at        INTEGER NOT NULL,
  event     TEXT    NOT NULL,
  text      TEXT    NOT NULL
) STRICT;
CREATE INDEX history_by_order ON history (order_seq, seq);

-- What each idempotency key was answered, byte for byte.
CREATE TABLE intake (
  key         TEXT    NOT NULL PRIMARY KEY,
  body_hash   TEXT    NOT NULL,
  location    TEXT    NOT NULL,
  answer      TEXT    NOT NULL,
  answered_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
