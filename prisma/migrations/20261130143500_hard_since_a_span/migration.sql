-- "Hard since spring" is a span of days, of the bed that was in service when they called: it dates that bed's failure once it comes out as failed.
SET lock_timeout = '5s';

ALTER TABLE "phone_call" ADD COLUMN "hard_since_latest" DATE;
ALTER TABLE "phone_call" ADD COLUMN "hard_since_as_said" TEXT;
ALTER TABLE "phone_call" ADD COLUMN "bed_id" UUID;
ALTER TABLE "phone_call" ADD CONSTRAINT "phone_call_company_id_bed_id_fkey"
  FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE NOT VALID;
ALTER TABLE "phone_call" VALIDATE CONSTRAINT "phone_call_company_id_bed_id_fkey";
ALTER TABLE "phone_call" ADD CONSTRAINT "phone_call_hard_since_check"
  CHECK (hard_since_latest IS NULL OR (hard_since_day IS NOT NULL AND hard_since_latest >= hard_since_day)) NOT VALID;
ALTER TABLE "phone_call" VALIDATE CONSTRAINT "phone_call_hard_since_check";
CREATE INDEX "phone_call_company_id_bed_id_idx" ON "phone_call" ("company_id", "bed_id");
