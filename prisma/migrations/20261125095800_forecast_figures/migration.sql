-- A bed's chances per month and node are summed by the worker only, never searched: bytes take a sixth of an array's room.
SET lock_timeout = '5s';
ALTER TABLE "bed_forecast" DROP COLUMN "month_chances";
ALTER TABLE "bed_forecast" ADD COLUMN "month_chances" BYTEA NOT NULL DEFAULT '', ADD COLUMN "chance_already_failed" DOUBLE PRECISION, ADD COLUMN "question" TEXT;
ALTER TABLE "bed_forecast" ALTER COLUMN "month_chances" DROP DEFAULT;
ALTER TABLE "forecast_month" ADD COLUMN "months" INTEGER NOT NULL DEFAULT 1;
DROP INDEX forecast_month_one;
CREATE UNIQUE INDEX forecast_month_one ON "forecast_month" (company_id, water_supply_id, month, months) NULLS NOT DISTINCT;
