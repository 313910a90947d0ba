-- The stores' items are added, changed and put away by the company itself, salt among them. A tube says its diameter in a column: it stood in the name alone, and a
-- tube named otherwise was taken for any.
SET lock_timeout = '5s';

ALTER TABLE "stock_item"
  ADD COLUMN "tube_od_in" DOUBLE PRECISION,
  DROP CONSTRAINT "stock_item_kind_check",
  ADD CONSTRAINT "stock_item_kind_check" CHECK (kind IN ('resin', 'gravel', 'tube', 'cap', 'seal', 'grease', 'sanitiser', 'container', 'salt', 'other')),
  ADD CONSTRAINT "stock_item_tube_check" CHECK (tube_od_in IS NULL OR (kind = 'tube' AND tube_od_in BETWEEN 0.25 AND 6));

SELECT almanac_for_each_company($$
  UPDATE stock_item SET tube_od_in = substring(name FROM '(\d+(?:\.\d+)?) ?in\M')::double precision
  WHERE kind = 'tube' AND substring(name FROM '(\d+(?:\.\d+)?) ?in\M')::double precision BETWEEN 0.25 AND 6
$$, $$
  SELECT count(*) FROM stock_item WHERE kind = 'tube' AND tube_od_in IS NULL
    AND substring(name FROM '(\d+(?:\.\d+)?) ?in\M')::double precision BETWEEN 0.25 AND 6
$$);

-- What a customer asks for without a rebed: lines from the stores, set aside for a job until they are collected, shipped or delivered.
ALTER TABLE "movement"
  ADD COLUMN "job_id" UUID,
  DROP CONSTRAINT "movement_reason_check",
  ADD CONSTRAINT "movement_reason_check" CHECK (reason IN ('received', 'used', 'counted', 'returned', 'handed-over')),
  ADD CONSTRAINT "movement_job" FOREIGN KEY ("company_id", "job_id") REFERENCES "job" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
CREATE INDEX "movement_company_id_job_id_idx" ON "movement" ("company_id", "job_id");

CREATE TABLE "material_line" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "job_id" UUID NOT NULL,
  "stock_item_id" UUID NOT NULL,
  "quantity" DOUBLE PRECISION NOT NULL,
  "returned" DOUBLE PRECISION NOT NULL DEFAULT 0,
  "state" TEXT NOT NULL,
  "way" TEXT,
  "handed_at" TIMESTAMPTZ(3),
  CONSTRAINT "material_line_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "material_line_job" FOREIGN KEY ("company_id", "job_id") REFERENCES "job" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "material_line_stock_item" FOREIGN KEY ("company_id", "stock_item_id") REFERENCES "stock_item" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "material_line_state_check" CHECK (state IN ('reserved', 'picked', 'handed-over', 'returned', 'called-off')),
  CONSTRAINT "material_line_way_check" CHECK (way IN ('collected', 'shipped', 'delivered')),
  CONSTRAINT "material_line_quantity_check" CHECK (quantity > 0 AND returned BETWEEN 0 AND quantity),
  -- What is only set aside, or was, has gone nowhere; what went has a day and a way.
  CONSTRAINT "material_line_handed_check" CHECK (
    CASE state WHEN 'returned' THEN handed_at IS NOT NULL AND way IS NOT NULL AND returned = quantity
      WHEN 'handed-over' THEN handed_at IS NOT NULL AND way IS NOT NULL AND returned < quantity
      ELSE way IS NULL AND handed_at IS NULL AND returned = 0 END
  )
);
-- One line for an item while it is still set aside.
CREATE UNIQUE INDEX "material_line_reserved_once" ON "material_line" ("company_id", "job_id", "stock_item_id") WHERE state IN ('reserved', 'picked');
CREATE INDEX "material_line_company_id_job_id_idx" ON "material_line" ("company_id", "job_id");
CREATE INDEX "material_line_company_id_stock_item_id_state_idx" ON "material_line" ("company_id", "stock_item_id", "state");

SELECT almanac_secure_table('material_line'::regclass, 'SELECT, INSERT, UPDATE');
