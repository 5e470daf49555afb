-- What each service last said of a revision, in whatever order it came.
CREATE TABLE told (
  order_number TEXT    NOT NULL,
  revision     INTEGER NOT NULL,
  kind         TEXT    NOT NULL CHECK (kind IN ('order', 'plan', 'labels')),
  said_at      INTEGER NOT NULL,
  message_id   TEXT    NOT NULL,
  body         TEXT    NOT NULL,
  PRIMARY KEY (order_number, revision, kind)
) STRICT, WITHOUT ROWID;

-- A row of the board: what the newest confirmed revision has come to. Follows from told alone.
-- place sorts it: waiting orders by their age, then finished ones, the newest first.
-- change numbers the row's latest change, over all orders; the stream resumes from it.
CREATE TABLE tracked_order (
  order_number TEXT    NOT NULL PRIMARY KEY,
  revision     INTEGER NOT NULL,
  ship_to      TEXT    NOT NULL,
  building     TEXT    NOT NULL,
  summary      TEXT    NOT NULL,
  needed_by    TEXT    NOT NULL,
  pieces       INTEGER NOT NULL,
  rolls        INTEGER,
  labels       INTEGER,
  state        TEXT    NOT NULL CHECK (state IN ('confirmed', 'planned', 'labelled', 'parked')),
  reasons      TEXT    NOT NULL,
  confirmed_at INTEGER NOT NULL,
  decided_at   INTEGER,
  finished_at  INTEGER,
  place        INTEGER NOT NULL,
  change       INTEGER NOT NULL UNIQUE
) STRICT, WITHOUT ROWID;
CREATE INDEX tracked_order_by_place ON tracked_order (place, order_number);

-- Names this store, so that a stream resumed from another one is told to start anew.
CREATE TABLE feed (name TEXT NOT NULL) STRICT;
INSERT INTO feed (name) VALUES (lower(hex(randomblob(4))));
