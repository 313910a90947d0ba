-- Fits of the life model to a company's own records, runs that are staged and shown as one, past forecasts held against what came, and the levelled plan.
SET lock_timeout = '5s';

CREATE TABLE "forecast_fit" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" TEXT NOT NULL,
  "as_of_day" DATE NOT NULL,
  "started_at" TIMESTAMPTZ(3) NOT NULL,
  "finished_at" TIMESTAMPTZ(3) NOT NULL,
  "shown_at" TIMESTAMPTZ(3),
  "data_hash" TEXT NOT NULL,
  "records" INTEGER NOT NULL,
  "failures" INTEGER NOT NULL,
  "ended_beds" INTEGER NOT NULL,
  "left_out" JSONB NOT NULL,
  "summary" JSONB NOT NULL,
  "parameters" JSONB NOT NULL,
  "fell_back_because" TEXT,
  CONSTRAINT "forecast_fit_pkey" PRIMARY KEY ("company_id", "id")
);
CREATE UNIQUE INDEX "forecast_fit_company_id_version_key" ON "forecast_fit" ("company_id", "version");
CREATE INDEX "forecast_fit_company_id_shown_at_idx" ON "forecast_fit" ("company_id", "shown_at");
SELECT almanac_secure_table('forecast_fit'::regclass, 'SELECT, INSERT, UPDATE');

ALTER TABLE "forecast_run"
  ADD COLUMN "fit_id" UUID,
  ADD COLUMN "scope" TEXT NOT NULL DEFAULT 'beds',
  ADD COLUMN "refits" BOOLEAN NOT NULL DEFAULT false,
  ADD COLUMN "water_supply_id" UUID,
  ADD COLUMN "batch_id" UUID,
  ADD COLUMN "after_bed_id" UUID,
  ADD CHECK ("scope" IN ('beds', 'company')),
  ADD CONSTRAINT "forecast_run_company_id_fit_id_fkey" FOREIGN KEY ("company_id", "fit_id") REFERENCES "forecast_fit" ("company_id", "id")
    ON DELETE RESTRICT ON UPDATE CASCADE;
-- What a start looks for: runs of a whole company that were broken off.
CREATE INDEX "forecast_run_unfinished" ON "forecast_run" ("company_id") WHERE "finished_at" IS NULL AND "scope" = 'company';

CREATE TABLE "forecast_draft" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "run_id" UUID NOT NULL,
  "bed_id" UUID NOT NULL,
  "computed_at" TIMESTAMPTZ(3) NOT NULL,
  "figures" JSONB NOT NULL,
  "month_chances" BYTEA NOT NULL,
  CONSTRAINT "forecast_draft_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "forecast_draft_company_id_run_id_fkey" FOREIGN KEY ("company_id", "run_id") REFERENCES "forecast_run" ("company_id", "id")
    ON DELETE RESTRICT ON UPDATE CASCADE
);
CREATE UNIQUE INDEX "forecast_draft_company_id_run_id_bed_id_key" ON "forecast_draft" ("company_id", "run_id", "bed_id");
SELECT almanac_secure_table('forecast_draft'::regclass, 'SELECT, INSERT, DELETE');

CREATE TABLE "forecast_backtest" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "as_of_day" DATE NOT NULL,
  "started_at" TIMESTAMPTZ(3) NOT NULL,
  "finished_at" TIMESTAMPTZ(3) NOT NULL,
  "data_hash" TEXT NOT NULL,
  "origins" JSONB NOT NULL,
  "result" JSONB,
  "refusal" TEXT,
  CONSTRAINT "forecast_backtest_pkey" PRIMARY KEY ("company_id", "id"),
  CHECK (("result" IS NULL) <> ("refusal" IS NULL))
);
CREATE INDEX "forecast_backtest_company_id_finished_at_idx" ON "forecast_backtest" ("company_id", "finished_at");
SELECT almanac_secure_table('forecast_backtest'::regclass, 'SELECT, INSERT');

CREATE TABLE "forecast_plan" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "run_id" UUID NOT NULL,
  "finished_at" TIMESTAMPTZ(3) NOT NULL,
  "limits" JSONB NOT NULL,
  "months" JSONB,
  "refusal" TEXT,
  CONSTRAINT "forecast_plan_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "forecast_plan_company_id_run_id_fkey" FOREIGN KEY ("company_id", "run_id") REFERENCES "forecast_run" ("company_id", "id")
    ON DELETE RESTRICT ON UPDATE CASCADE
);
CREATE INDEX "forecast_plan_company_id_finished_at_idx" ON "forecast_plan" ("company_id", "finished_at");
SELECT almanac_secure_table('forecast_plan'::regclass, 'SELECT, INSERT');
