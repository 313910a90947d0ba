-- The month picture by supply, area and kind of resin: one row a group. "forecast_month" keeps the whole company; its rows by supply are no longer written.
SET lock_timeout = '5s';

CREATE TABLE "forecast_group" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "run_id" UUID NOT NULL,
  "by" TEXT NOT NULL CHECK ("by" IN ('supply', 'area', 'resin')),
  "key" TEXT,
  "beds" INTEGER NOT NULL,
  "failed_already" DOUBLE PRECISION NOT NULL,
  "first_month" DATE NOT NULL,
  "months" JSONB NOT NULL,
  "years" JSONB NOT NULL,
  CONSTRAINT "forecast_group_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "forecast_group_company_id_run_id_fkey" FOREIGN KEY ("company_id", "run_id") REFERENCES "forecast_run" ("company_id", "id")
    ON DELETE RESTRICT ON UPDATE CASCADE
);
CREATE UNIQUE INDEX forecast_group_one ON "forecast_group" ("company_id", "by", "key") NULLS NOT DISTINCT;
SELECT almanac_secure_table('forecast_group'::regclass, 'SELECT, INSERT, UPDATE, DELETE');
