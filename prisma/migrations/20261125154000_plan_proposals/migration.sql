-- Plans worked out in the background for a dispatcher to accept, in whole or in part.
SET lock_timeout = '5s';

CREATE TABLE "plan_proposal" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "kind" TEXT NOT NULL,
  "from_day" DATE NOT NULL,
  "until_day" DATE NOT NULL,
  "state" TEXT NOT NULL,
  "asked" JSONB NOT NULL,
  "board" JSONB,
  "proposal" JSONB,
  "failure" TEXT,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  "created_by" UUID NOT NULL,
  CONSTRAINT "plan_proposal_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "plan_proposal_kind_check" CHECK (kind IN ('week', 'sheet-off', 'fewer-people', 'other-vehicle')),
  CONSTRAINT "plan_proposal_state_check" CHECK (state IN ('running', 'ready', 'failed', 'stopped', 'accepted'))
);
CREATE INDEX "plan_proposal_company_id_created_at_idx" ON "plan_proposal" ("company_id", "created_at");
SELECT almanac_secure_table('plan_proposal'::regclass, 'SELECT, INSERT, UPDATE');
