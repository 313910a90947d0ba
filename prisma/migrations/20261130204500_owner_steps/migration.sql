-- An owner rebeds by the link, step by step, with two points at which the office looks at a photograph first; photographs come by the same link; it can become a visit.
SET lock_timeout = '5s';

ALTER TABLE "owner_guide"
  ADD COLUMN "state" TEXT NOT NULL DEFAULT 'measuring',
  ADD COLUMN "bed_id" UUID,
  ADD COLUMN "step" TEXT,
  ADD COLUMN "to_fix" TEXT,
  ADD COLUMN "ended" TEXT,
  ADD COLUMN "job_id" UUID,
  ADD CONSTRAINT "owner_guide_bed" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  ADD CONSTRAINT "owner_guide_job" FOREIGN KEY ("company_id", "job_id") REFERENCES "job" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  ADD CONSTRAINT "owner_guide_state_check" CHECK (state IN ('measuring', 'working', 'holding', 'looking', 'asked', 'soft', 'trouble', 'visit')),
  ADD CONSTRAINT "owner_guide_ended_check" CHECK (ended IN ('soft', 'hard', 'beads', 'wrong')),
  -- Nobody is at a step of a bed that nobody named.
  ADD CONSTRAINT "owner_guide_step_check" CHECK (state NOT IN ('working', 'holding', 'looking') OR (bed_id IS NOT NULL AND step IS NOT NULL));
CREATE INDEX "owner_guide_company_id_bed_id_idx" ON "owner_guide" ("company_id", "bed_id");
CREATE INDEX "owner_guide_company_id_job_id_idx" ON "owner_guide" ("company_id", "job_id");

ALTER TABLE "picture"
  ALTER COLUMN "visit_id" DROP NOT NULL,
  ADD COLUMN "guide_id" UUID,
  ADD CONSTRAINT "picture_guide" FOREIGN KEY ("company_id", "guide_id") REFERENCES "owner_guide" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  ADD CONSTRAINT "picture_of_one_check" CHECK ((visit_id IS NULL) <> (guide_id IS NULL)),
  DROP CONSTRAINT "picture_kind_check",
  ADD CONSTRAINT "picture_kind_check" CHECK (kind IN ('label', 'as-found', 'old-bed', 'as-left', 'signature', 'valve', 'bypass', 'cap'));
CREATE INDEX "picture_company_id_guide_id_idx" ON "picture" ("company_id", "guide_id");
