-- Which plan it is of: of two words on one revision the higher number counts, then the later.
ALTER TABLE told ADD COLUMN number INTEGER NOT NULL DEFAULT 0;
UPDATE told SET number = CASE kind WHEN 'plan' THEN 1 WHEN 'labels' THEN 3 ELSE 0 END;
