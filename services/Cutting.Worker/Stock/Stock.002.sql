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

-- Answers to receipts, so that a receipt sent twice puts rolls on the rack once.
CREATE TABLE receipt (
  receipt_id  TEXT    NOT NULL PRIMARY KEY,
  stock_ids   TEXT    NOT NULL,
  received_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
