-- Calls are kept, with what was said and what follows, and whoever is to be called stands on a list until somebody has.
SET lock_timeout = '5s';

CREATE TABLE "phone_call" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "at" TIMESTAMPTZ(3) NOT NULL,
  "person_id" UUID NOT NULL,
  "site_id" UUID,
  "softener_id" UUID,
  "customer_id" UUID,
  "caller_name" TEXT,
  "caller_phone" TEXT,
  "sees" TEXT,
  "words" TEXT,
  "advised" TEXT,
  "still_soft" BOOLEAN NOT NULL DEFAULT false,
  "hard_since_day" DATE,
  "follows" TEXT NOT NULL,
  "job_id" UUID,
  "visit_id" UUID,
  CONSTRAINT "phone_call_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "phone_call_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "phone_call_company_id_softener_id_fkey" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "phone_call_company_id_customer_id_fkey" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "phone_call_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "phone_call_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "phone_call_sees_check" CHECK (sees IN ('hard-water', 'no-water', 'leak', 'low-pressure', 'beads', 'salty', 'discolored', 'runs-on', 'no-salt-used', 'question')),
  CONSTRAINT "phone_call_follows_check" CHECK (follows IN ('nothing', 'visit', 'materials', 'quote', 'call-back')),
  -- Soft and hard at once is no answer.
  CONSTRAINT "phone_call_soft_check" CHECK (NOT (still_soft AND hard_since_day IS NOT NULL))
);
CREATE INDEX "phone_call_company_id_at_id_idx" ON "phone_call" ("company_id", "at", "id");
CREATE INDEX "phone_call_company_id_site_id_at_idx" ON "phone_call" ("company_id", "site_id", "at");
CREATE INDEX "phone_call_company_id_customer_id_idx" ON "phone_call" ("company_id", "customer_id");

CREATE TABLE "call_back" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "cause" TEXT NOT NULL,
  "state" TEXT NOT NULL,
  "due_day" DATE NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  "call_id" UUID,
  "site_id" UUID,
  "job_id" UUID,
  "visit_id" UUID,
  "note" TEXT,
  "outcome" TEXT,
  "closed_at" TIMESTAMPTZ(3),
  "closed_by" UUID,
  CONSTRAINT "call_back_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "call_back_company_id_call_id_fkey" FOREIGN KEY ("company_id", "call_id") REFERENCES "phone_call" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "call_back_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "call_back_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "call_back_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "call_back_cause_check" CHECK (cause IN ('asked', 'quote', 'promise', 'missed')),
  CONSTRAINT "call_back_state_check" CHECK (state IN ('open', 'done', 'kept')),
  CONSTRAINT "call_back_outcome_check" CHECK (outcome IN ('talked', 'no-answer')),
  -- Nobody stands on the list of whom nobody knows who they are.
  CONSTRAINT "call_back_whom_check" CHECK (call_id IS NOT NULL OR site_id IS NOT NULL)
);
CREATE INDEX "call_back_company_id_state_due_day_id_idx" ON "call_back" ("company_id", "state", "due_day", "id");
CREATE INDEX "call_back_company_id_site_id_idx" ON "call_back" ("company_id", "site_id");
CREATE INDEX "call_back_company_id_job_id_idx" ON "call_back" ("company_id", "job_id");
CREATE INDEX "call_back_company_id_visit_id_idx" ON "call_back" ("company_id", "visit_id");

SELECT almanac_secure_table('phone_call'::regclass, 'SELECT, INSERT, UPDATE');
SELECT almanac_secure_table('call_back'::regclass, 'SELECT, INSERT, UPDATE');
