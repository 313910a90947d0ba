-- A customer answers a reminder by its link: once, and for as long as the link works. Reminders of before have no link.
SET lock_timeout = '5s';

ALTER TABLE "reminder" ADD COLUMN "link_until" TIMESTAMPTZ(3);

CREATE TABLE "reminder_answer" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "reminder_id" UUID NOT NULL,
  "kind" TEXT NOT NULL CHECK ("kind" IN ('days', 'not-now', 'done', 'moved', 'stop')),
  -- Days that suit, in the customer's words.
  "days" TEXT,
  -- Not now: ask again from this day on.
  "ask_after" DATE,
  -- Already done: when, and by whom.
  "done_day" DATE,
  "done_by" TEXT CHECK ("done_by" IN ('you', 'other-company', 'self')),
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "reminder_answer_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "reminder_answer_of_kind" CHECK (("kind" <> 'not-now' OR "ask_after" IS NOT NULL) AND ("kind" <> 'done' OR ("done_day" IS NOT NULL AND "done_by" IS NOT NULL)))
);
CREATE UNIQUE INDEX "reminder_answer_company_id_reminder_id_key" ON "reminder_answer" ("company_id", "reminder_id");
CREATE INDEX "reminder_answer_company_id_created_at_id_idx" ON "reminder_answer" ("company_id", "created_at", "id");
ALTER TABLE "reminder_answer" ADD CONSTRAINT "reminder_answer_company_id_reminder_id_fkey"
  FOREIGN KEY ("company_id", "reminder_id") REFERENCES "reminder" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
SELECT almanac_secure_table('reminder_answer'::regclass, 'SELECT, INSERT, UPDATE');
