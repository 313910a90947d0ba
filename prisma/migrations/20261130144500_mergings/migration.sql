-- What was on record twice is merged later: what hangs on the one that goes moves to the one that stays. Which rows moved stands here, so that it can be undone.
SET lock_timeout = '5s';

CREATE TABLE "merging" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "kind" TEXT NOT NULL,
  "kept_id" UUID,
  "gone_id" UUID,
  "town" TEXT,
  "moved" JSONB NOT NULL,
  "at" TIMESTAMPTZ(3) NOT NULL,
  "person_id" UUID NOT NULL,
  "undone_at" TIMESTAMPTZ(3),
  CONSTRAINT "merging_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "merging_kind_check" CHECK (kind IN ('customer', 'site', 'town')),
  CONSTRAINT "merging_of_check" CHECK (CASE kind WHEN 'town' THEN town IS NOT NULL AND kept_id IS NULL AND gone_id IS NULL
    ELSE town IS NULL AND kept_id IS NOT NULL AND gone_id IS NOT NULL AND kept_id <> gone_id END)
);
CREATE INDEX "merging_company_id_at_idx" ON "merging" ("company_id", "at", "id");
CREATE INDEX "merging_company_id_gone_id_idx" ON "merging" ("company_id", "gone_id");
CREATE INDEX "merging_company_id_kept_id_idx" ON "merging" ("company_id", "kept_id");

SELECT almanac_secure_table('merging'::regclass, 'SELECT, INSERT, UPDATE');
