-- A job that follows another: work of several visits, such as measuring before a rebed or filling a large tank on the second day.
SET lock_timeout = '5s';

ALTER TABLE "job"
  ADD COLUMN "after_job_id" UUID,
  ADD COLUMN "after_least_days" INTEGER CHECK ("after_least_days" BETWEEN 0 AND 365),
  ADD CONSTRAINT "job_after_is_another" CHECK ("after_job_id" <> "id"),
  ADD CONSTRAINT "job_after_with_days" CHECK (("after_job_id" IS NULL) = ("after_least_days" IS NULL)),
  ADD CONSTRAINT "job_company_id_after_job_id_fkey" FOREIGN KEY ("company_id", "after_job_id") REFERENCES "job" ("company_id", "id")
    ON DELETE RESTRICT ON UPDATE CASCADE;
CREATE INDEX "job_company_id_after_job_id_idx" ON "job" ("company_id", "after_job_id");
