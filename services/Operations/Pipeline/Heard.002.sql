-- What Orders says of an order as a whole, by its own count of changes: makes up for messages
-- that were lost with a process, and tells of orders it parked by itself.
CREATE TABLE heard (
  order_number TEXT    NOT NULL PRIMARY KEY,
  revision     INTEGER NOT NULL,
  change       INTEGER NOT NULL,
  body         TEXT    NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX heard_by_change ON heard (change);
