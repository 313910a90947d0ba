-- Commands of tablets carry a number in their queue; what can't be taken in waits for the dispatcher with all its content.
SET lock_timeout = '5s';

ALTER TABLE "applied_command" ADD COLUMN "queue_id" UUID;
ALTER TABLE "applied_command" ADD COLUMN "sequence" INTEGER;
ALTER TABLE "applied_command" ADD CONSTRAINT "applied_command_numbered" CHECK (("queue_id" IS NULL) = ("sequence" IS NULL));
CREATE INDEX "applied_command_queue" ON "applied_command" ("company_id", "person_id", "queue_id", "sequence") WHERE "queue_id" IS NOT NULL;

CREATE TABLE "set_aside" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "kind" TEXT NOT NULL CHECK ("kind" IN ('refused', 'unreadable', 'landed', 'lost')),
  "command_id" UUID NOT NULL,
  "queue_id" UUID NOT NULL,
  "sequence" INTEGER NOT NULL,
  "visit_id" UUID,
  "person_id" UUID NOT NULL,
  "command" TEXT NOT NULL,
  "content" JSONB NOT NULL,
  "reason" TEXT NOT NULL,
  "made_at" TIMESTAMPTZ(3) NOT NULL,
  "clock_ahead_minutes" INTEGER NOT NULL,
  "received_at" TIMESTAMPTZ(3) NOT NULL,
  "settled_at" TIMESTAMPTZ(3),
  "settled_by" UUID,
  CONSTRAINT "set_aside_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "set_aside_visit" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit" ("company_id", "id") ON DELETE RESTRICT
);
SELECT almanac_secure_table('set_aside'::regclass, 'SELECT, INSERT, UPDATE');
CREATE INDEX "set_aside_open" ON "set_aside" ("company_id", "received_at", "id") WHERE "settled_at" IS NULL;
