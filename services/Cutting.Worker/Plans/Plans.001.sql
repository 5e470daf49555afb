-- The newest revision of every order that was confirmed. Instants are UTC milliseconds since 1970.
CREATE TABLE cutting_order (
  order_number TEXT    NOT NULL PRIMARY KEY,
  revision     INTEGER NOT NULL CHECK (revision >= 1),
  needed_by    TEXT    NOT NULL,
  confirmed_at INTEGER NOT NULL,
  state        TEXT    NOT NULL CHECK (state IN ('waiting', 'planned', 'refused')),
  pool         TEXT,
  tries        INTEGER NOT NULL DEFAULT 0,
  decided_at   INTEGER,
  refusals     TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX order_by_age ON cutting_order (state, confirmed_at, order_number);

-- The rolls that can always be had for an order.
CREATE TABLE offered_roll (
  order_number         TEXT    NOT NULL REFERENCES cutting_order,
  product              TEXT    NOT NULL,
  width_nm             INTEGER NOT NULL,
  roll_length_nm       INTEGER NOT NULL CHECK (roll_length_nm > 0),
  end_trim_nm          INTEGER NOT NULL CHECK (end_trim_nm >= 0),
  min_useful_offcut_nm INTEGER NOT NULL CHECK (min_useful_offcut_nm >= 0),
  PRIMARY KEY (order_number, product, width_nm, roll_length_nm)
) STRICT, WITHOUT ROWID;

-- One product of one width, for one order or for several planned together.
CREATE TABLE plan (
  plan_id           INTEGER PRIMARY KEY,
  product           TEXT    NOT NULL,
  width_nm          INTEGER NOT NULL,
  lower_bound_rolls INTEGER NOT NULL CHECK (lower_bound_rolls >= 0),
  proven            INTEGER NOT NULL CHECK (proven IN (0, 1)),
  method            TEXT    NOT NULL,
  explanation       TEXT    NOT NULL,
  planned_at        INTEGER NOT NULL
) STRICT;

-- A roll of a plan. spoiled_nm was cut from it and is lost; finished_at is set with the last cut.
CREATE TABLE roll (
  roll_id        INTEGER PRIMARY KEY AUTOINCREMENT,
  plan_id        INTEGER NOT NULL REFERENCES plan,
  number         INTEGER NOT NULL CHECK (number >= 1),
  stock_id       TEXT,
  roll_length_nm INTEGER NOT NULL CHECK (roll_length_nm > 0),
  end_trim_nm    INTEGER NOT NULL CHECK (end_trim_nm >= 0),
  left_over_nm   INTEGER NOT NULL CHECK (left_over_nm >= 0),
  leaves_offcut  INTEGER NOT NULL CHECK (leaves_offcut IN (0, 1)),
  spoiled_nm     INTEGER NOT NULL DEFAULT 0 CHECK (spoiled_nm >= 0),
  is_short       INTEGER NOT NULL DEFAULT 0 CHECK (is_short IN (0, 1)),
  finished_at    INTEGER,
  UNIQUE (plan_id, number)
) STRICT;
CREATE UNIQUE INDEX roll_of_stock ON roll (stock_id) WHERE stock_id IS NOT NULL;

-- roll_id and sequence are the piece's place; both are null until it has one.
CREATE TABLE piece (
  piece_id     TEXT    NOT NULL PRIMARY KEY,
  order_number TEXT    NOT NULL REFERENCES cutting_order,
  place        INTEGER NOT NULL,
  mark         TEXT    NOT NULL,
  plane        TEXT    NOT NULL,
  product      TEXT    NOT NULL,
  width_nm     INTEGER NOT NULL,
  width_text   TEXT    NOT NULL,
  cut_nm       INTEGER NOT NULL CHECK (cut_nm > 0),
  cut_text     TEXT    NOT NULL,
  roll_id      INTEGER REFERENCES roll,
  sequence     INTEGER,
  cut_at       INTEGER,
  voided_at    INTEGER,
  UNIQUE (roll_id, sequence)
) STRICT, WITHOUT ROWID;
CREATE INDEX piece_of_order ON piece (order_number, place);

-- Counts every change of pieces, rolls and stock, so that a plan is never stored over a state
-- other than the one it was made from.
CREATE TABLE bench (
  only    INTEGER NOT NULL PRIMARY KEY CHECK (only = 1),
  changes INTEGER NOT NULL
) STRICT;
INSERT INTO bench (only, changes) VALUES (1, 0);
