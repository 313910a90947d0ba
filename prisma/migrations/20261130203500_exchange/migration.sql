-- A tank may be exchanged for another with its bed: a kind of job of its own.
SET lock_timeout = '5s';

ALTER TABLE "job" DROP CONSTRAINT "job_kind_check",
  ADD CONSTRAINT "job_kind_check" CHECK (kind IN ('rebed', 'annual-visit', 'cleaning', 'inspection', 'repair', 'installation', 'exchange', 'delivery', 'warranty-return', 'emergency'));
