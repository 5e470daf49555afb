-- Numbers that differ only in upper and lower case are one number.
CREATE INDEX order_by_number ON orders (order_number COLLATE NOCASE);
