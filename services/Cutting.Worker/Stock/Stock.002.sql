-- What lies on the rack: rolls as received and offcuts worth keeping, each with its own label.
-- A row is free until a roll of a plan takes it (roll.stock_id); used_at is set when that is cut.
CREATE TABLE stock (
  stock_id    TEXT    NOT NULL PRIMARY KEY,
  kind        TEXT    NOT NULL CHECK (kind IN ('roll', 'offcut')),
  product     TEXT    NOT NULL,
  width_nm    INTEGER NOT NULL CHECK (width_nm > 0),
  length_nm   INTEGER NOT NULL CHECK (length_nm > 0),
  end_trim_nm INTEGER NOT NULL CHECK (end_trim_nm >= 0),
  lot         TEXT,
  from_roll   INTEGER,
  received_at INTEGER NOT NULL,
  used_at     INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX stock_by_kind ON stock (product, width_nm, received_at);

-- Requests of the bench that were answered, by their Idempotency-Key.
CREATE TABLE answered (
  key         TEXT    NOT NULL PRIMARY KEY,
  request     TEXT    NOT NULL,
  answer      TEXT    NOT NULL,
  answered_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
