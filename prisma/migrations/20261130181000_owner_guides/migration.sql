-- An owner measures their tank by a link while the office watches: the link with its end, and the last of each measurement.
SET lock_timeout = '5s';

CREATE TABLE "owner_guide" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "softener_id" UUID NOT NULL,
  "person_id" UUID NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  "link_until" TIMESTAMPTZ(3) NOT NULL,
  "withdrawn_at" TIMESTAMPTZ(3),
  CONSTRAINT "owner_guide_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "owner_guide_softener" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE
);
CREATE INDEX "owner_guide_company_id_softener_id_idx" ON "owner_guide" ("company_id", "softener_id");

CREATE TABLE "guide_entry" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "guide_id" UUID NOT NULL,
  "measure" TEXT NOT NULL,
  "value_in" DOUBLE PRECISION NOT NULL,
  "entered" JSONB NOT NULL,
  "at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "guide_entry_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "guide_entry_guide" FOREIGN KEY ("company_id", "guide_id") REFERENCES "owner_guide" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "guide_entry_measure_check" CHECK (measure IN ('around', 'height')),
  CONSTRAINT "guide_entry_value_check" CHECK (value_in > 0)
);
CREATE UNIQUE INDEX "guide_entry_company_id_guide_id_measure_key" ON "guide_entry" ("company_id", "guide_id", "measure");

SELECT almanac_secure_table('owner_guide'::regclass, 'SELECT, INSERT, UPDATE');
SELECT almanac_secure_table('guide_entry'::regclass, 'SELECT, INSERT, UPDATE');
