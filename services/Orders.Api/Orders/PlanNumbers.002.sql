-- An order may be planned again while it is cut. Cutting counts its decisions, and what is said of
-- an older one, however late, changes nothing: decided is the newest heard of, the others say which
-- plan the figures beside them are of. 0 is before the first.
ALTER TABLE orders ADD COLUMN decided INTEGER NOT NULL DEFAULT 0;
ALTER TABLE orders ADD COLUMN planned_plan INTEGER NOT NULL DEFAULT 0;
ALTER TABLE orders ADD COLUMN labelled_plan INTEGER NOT NULL DEFAULT 0;
ALTER TABLE orders ADD COLUMN failed_plan INTEGER NOT NULL DEFAULT 0;
UPDATE orders SET decided = 1, planned_plan = 1 WHERE planned_at IS NOT NULL;
UPDATE orders SET decided = 1, labelled_plan = 1 WHERE labelled_at IS NOT NULL;
