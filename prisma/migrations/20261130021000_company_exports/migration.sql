-- Everything out: one archive of a company's records, written by the worker. The row says how far it is; the file lies in the data folder.
SET lock_timeout = '5s';

CREATE TABLE "company_export" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "state" TEXT NOT NULL CHECK ("state" IN ('waiting', 'writing', 'ready', 'failed', 'removed')),
  "tables_done" INTEGER NOT NULL DEFAULT 0,
  "tables_total" INTEGER NOT NULL,
  "rows_written" INTEGER NOT NULL DEFAULT 0,
  "bytes" DOUBLE PRECISION,
  "failure" TEXT,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  "created_by" UUID NOT NULL,
  "finished_at" TIMESTAMPTZ(3),
  CONSTRAINT "company_export_pkey" PRIMARY KEY ("company_id", "id")
);
SELECT almanac_secure_table('company_export'::regclass, 'SELECT, INSERT, UPDATE');
-- One at a time.
CREATE UNIQUE INDEX "company_export_one_under_way" ON "company_export" ("company_id") WHERE "state" IN ('waiting', 'writing');
