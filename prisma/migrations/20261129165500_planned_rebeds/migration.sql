-- The month that the levelled plan gives each bed: one row a bed at most, those of the plan before go with it.
SET lock_timeout = '5s';

CREATE TABLE "planned_rebed" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "plan_id" UUID NOT NULL,
  "bed_id" UUID NOT NULL,
  "month" DATE NOT NULL,
  "earliest_month" DATE NOT NULL,
  "latest_month" DATE NOT NULL,
  CONSTRAINT "planned_rebed_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "planned_rebed_company_id_plan_id_fkey" FOREIGN KEY ("company_id", "plan_id") REFERENCES "forecast_plan" ("company_id", "id")
    ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "planned_rebed_company_id_bed_id_fkey" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed" ("company_id", "id")
    ON DELETE RESTRICT ON UPDATE CASCADE,
  CHECK ("earliest_month" <= "month" AND "month" <= "latest_month")
);
CREATE UNIQUE INDEX "planned_rebed_company_id_bed_id_key" ON "planned_rebed" ("company_id", "bed_id");
CREATE INDEX "planned_rebed_company_id_plan_id_month_idx" ON "planned_rebed" ("company_id", "plan_id", "month");
SELECT almanac_secure_table('planned_rebed'::regclass, 'SELECT, INSERT, UPDATE, DELETE');
