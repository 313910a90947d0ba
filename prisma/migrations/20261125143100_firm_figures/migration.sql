-- A firm's own figures in the place of the usual ones, what its work costs, and the card a valve is known by.
SET lock_timeout = '5s';

CREATE TABLE "firm_figure" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "key" TEXT NOT NULL,
  "value" JSONB NOT NULL,
  "note" TEXT,
  "archived_at" TIMESTAMPTZ(3),
  CONSTRAINT "firm_figure_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "firm_figure_key_check" CHECK (length("key") BETWEEN 1 AND 80),
  CONSTRAINT "firm_figure_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
CREATE UNIQUE INDEX "firm_figure_company_id_key_key" ON "firm_figure" ("company_id", "key");
SELECT almanac_secure_table('firm_figure'::regclass, 'SELECT, INSERT, UPDATE');

-- Bag sizes become a figure like the others; the sizes that were only the column's default are left to the usual ones.
SELECT almanac_for_each_company(
  $$INSERT INTO firm_figure (company_id, id, "key", "value", note)
    SELECT company_id, gen_random_uuid(), 'bags', to_jsonb(bag_sizes_ft3), 'Kept from the settings'
    FROM company_settings WHERE bag_sizes_ft3 <> '{1,0.5,0.25}' AND cardinality(bag_sizes_ft3) > 0$$,
  $$SELECT count(*) FROM company_settings s WHERE bag_sizes_ft3 <> '{1,0.5,0.25}' AND cardinality(bag_sizes_ft3) > 0
    AND NOT EXISTS (SELECT FROM firm_figure f WHERE f.company_id = s.company_id AND f."key" = 'bags')$$
);
ALTER TABLE "company_settings" DROP COLUMN "bag_sizes_ft3";

ALTER TABLE "company_settings"
  ADD COLUMN "planned_rebed_minor" INTEGER,
  ADD COLUMN "failure_minor" INTEGER,
  ADD COLUMN "beads_minor" INTEGER,
  ADD COLUMN "overtime_minor_per_hour" INTEGER,
  ADD COLUMN "risk_limit" DOUBLE PRECISION NOT NULL DEFAULT 0.3,
  ADD CHECK (planned_rebed_minor >= 0), ADD CHECK (failure_minor >= 0), ADD CHECK (beads_minor >= 0), ADD CHECK (overtime_minor_per_hour >= 0),
  ADD CHECK (risk_limit > 0 AND risk_limit <= 1);

ALTER TABLE "valve" ADD COLUMN "card_id" TEXT, ADD CHECK (length(card_id) BETWEEN 1 AND 60);
