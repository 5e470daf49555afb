-- A revision may be planned again while it is cut: the highest plan number holds, and the set
-- follows it. What came before plans were counted is of the first.
ALTER TABLE half ADD COLUMN plan INTEGER NOT NULL DEFAULT 0;
ALTER TABLE label_set ADD COLUMN plan INTEGER NOT NULL DEFAULT 1;
UPDATE half SET plan = 1 WHERE kind = 'plan';

-- Why a plan's labels could not be drawn; gone once they are.
CREATE TABLE failure (
  order_number TEXT    NOT NULL,
  revision     INTEGER NOT NULL,
  plan         INTEGER NOT NULL,
  code         TEXT    NOT NULL,
  text         TEXT    NOT NULL,
  failed_at    INTEGER NOT NULL,
  PRIMARY KEY (order_number, revision)
) STRICT, WITHOUT ROWID;
