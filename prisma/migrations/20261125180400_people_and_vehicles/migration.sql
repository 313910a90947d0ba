-- What people may do, when they work, where they start, and when people and vehicles are away.
SET lock_timeout = '5s';

ALTER TABLE "colleague"
  ADD COLUMN "does_all" BOOLEAN NOT NULL DEFAULT true,
  ADD COLUMN "skills" TEXT[] NOT NULL DEFAULT '{}',
  ADD COLUMN "starts_at_home" BOOLEAN NOT NULL DEFAULT false,
  ADD COLUMN "home_latitude" DOUBLE PRECISION,
  ADD COLUMN "home_longitude" DOUBLE PRECISION,
  ADD COLUMN "overtime_minor_per_hour" INTEGER,
  ADD COLUMN "shifts" JSONB NOT NULL DEFAULT '[]',
  ADD COLUMN "breaks" JSONB NOT NULL DEFAULT '[]';
ALTER TABLE "colleague"
  ADD CONSTRAINT "colleague_home_check" CHECK (
    (home_latitude IS NULL) = (home_longitude IS NULL)
    AND (home_latitude IS NULL OR (abs(home_latitude) <= 90 AND abs(home_longitude) <= 180))
    AND (NOT starts_at_home OR home_latitude IS NOT NULL)
  ),
  ADD CONSTRAINT "colleague_overtime_check" CHECK (overtime_minor_per_hour IS NULL OR overtime_minor_per_hour >= 0);
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_room_check" CHECK (volume_ft3 >= 0 AND weight_lb >= 0);

CREATE TABLE "absence" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "colleague_id" UUID,
  "vehicle_id" UUID,
  "from_day" DATE NOT NULL,
  "until_day" DATE,
  "word" TEXT,
  "archived_at" TIMESTAMPTZ(3),
  CONSTRAINT "absence_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "absence_company_id_colleague_id_fkey" FOREIGN KEY ("company_id", "colleague_id") REFERENCES "colleague" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "absence_company_id_vehicle_id_fkey" FOREIGN KEY ("company_id", "vehicle_id") REFERENCES "vehicle" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "absence_of_one_check" CHECK (num_nonnulls(colleague_id, vehicle_id) = 1),
  CONSTRAINT "absence_days_check" CHECK (until_day IS NULL OR until_day >= from_day)
);
CREATE INDEX "absence_company_id_colleague_id_idx" ON "absence" ("company_id", "colleague_id");
CREATE INDEX "absence_company_id_vehicle_id_idx" ON "absence" ("company_id", "vehicle_id");
SELECT almanac_secure_table('absence'::regclass, 'SELECT, INSERT, UPDATE');
