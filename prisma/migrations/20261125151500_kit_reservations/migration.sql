-- What a booked rebed has spoken for in the stores, and how long an item takes to come.
SET lock_timeout = '5s';

CREATE TABLE "kit_reservation" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "visit_id" UUID NOT NULL,
  "stock_item_id" UUID NOT NULL,
  "quantity" DOUBLE PRECISION NOT NULL,
  "state" TEXT NOT NULL,
  CONSTRAINT "kit_reservation_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "kit_reservation_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "kit_reservation_company_id_stock_item_id_fkey" FOREIGN KEY ("company_id", "stock_item_id") REFERENCES "stock_item" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "kit_reservation_state_check" CHECK (state IN ('reserved', 'picked', 'used', 'returned')),
  CONSTRAINT "kit_reservation_quantity_check" CHECK (quantity > 0)
);
CREATE UNIQUE INDEX "kit_reservation_company_id_visit_id_stock_item_id_key" ON "kit_reservation" ("company_id", "visit_id", "stock_item_id");
CREATE INDEX "kit_reservation_company_id_stock_item_id_state_idx" ON "kit_reservation" ("company_id", "stock_item_id", "state");
SELECT almanac_secure_table('kit_reservation'::regclass, 'SELECT, INSERT, UPDATE');

ALTER TABLE "stock_item" ADD COLUMN "lead_days" INTEGER NOT NULL DEFAULT 14;
ALTER TABLE "stock_item" ADD CONSTRAINT "stock_item_lead_days_check" CHECK (lead_days BETWEEN 0 AND 365);
