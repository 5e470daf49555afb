-- What was ordered and in which order it is cut: both halves come by message, in any order.
CREATE TABLE half (
  order_number TEXT    NOT NULL,
  revision     INTEGER NOT NULL,
  kind         TEXT    NOT NULL CHECK (kind IN ('order', 'plan')),
  body         TEXT    NOT NULL,
  came_at      INTEGER NOT NULL,
  PRIMARY KEY (order_number, revision, kind)
) STRICT, WITHOUT ROWID;

-- A whole set: written once, from both halves, together with its announcement.
CREATE TABLE label_set (
  order_number  TEXT    NOT NULL,
  revision      INTEGER NOT NULL,
  label_count   INTEGER NOT NULL,
  printed_at    INTEGER NOT NULL,
  summary       TEXT    NOT NULL,
  labels_pdf    BLOB    NOT NULL,
  checklist_pdf BLOB    NOT NULL,
  PRIMARY KEY (order_number, revision)
) STRICT;
