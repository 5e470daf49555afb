-- Counts what was decided of an order, plans and refusals alike: whoever hears of two knows which
-- is the newer, in whatever order they come.
ALTER TABLE cutting_order ADD COLUMN plan_number INTEGER NOT NULL DEFAULT 0;
UPDATE cutting_order SET plan_number = 1 WHERE decided_at IS NOT NULL;
