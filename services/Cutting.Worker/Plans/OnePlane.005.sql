-- The foreman's wish: each plane of the order is finished before the next.
ALTER TABLE cutting_order ADD COLUMN one_plane_at_a_time INTEGER NOT NULL DEFAULT 0
  CHECK (one_plane_at_a_time IN (0, 1));
