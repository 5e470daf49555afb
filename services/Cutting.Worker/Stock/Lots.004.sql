-- A roll with a flaw comes to the rack as its sound parts, each with its own label. starts_nm is
-- where the part begins on the roll as it came.
ALTER TABLE stock ADD COLUMN part_of TEXT;
ALTER TABLE stock ADD COLUMN starts_nm INTEGER;
