-- Go or no-go for an owner who does a rebed alone, kept with its answers, reasons and the law.
SET lock_timeout = '5s';

CREATE TABLE "owner_decision" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "bed_id" UUID NOT NULL,
  "person_id" UUID NOT NULL,
  "at" TIMESTAMPTZ(3) NOT NULL,
  "verdict" TEXT NOT NULL,
  "answers" JSONB NOT NULL,
  "reasons" TEXT[] NOT NULL,
  "law" TEXT,
  CONSTRAINT "owner_decision_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "owner_decision_bed" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "owner_decision_verdict_check" CHECK (verdict IN ('firm', 'ask-first', 'owner-with-helper'))
);
CREATE INDEX "owner_decision_company_id_bed_id_at_idx" ON "owner_decision" ("company_id", "bed_id", "at");

SELECT almanac_secure_table('owner_decision'::regclass, 'SELECT, INSERT');
