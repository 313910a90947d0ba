-- Agreements: visits, salt deliveries and rentals that come again by a rule of RFC 5545, their price lines, and what became of each turn.
SET lock_timeout = '5s';

CREATE TABLE "agreement" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "site_id" UUID NOT NULL,
  "softener_id" UUID,
  "customer_id" UUID,
  "kind" TEXT NOT NULL,
  "rule" TEXT NOT NULL,
  "first_day" DATE NOT NULL,
  "counts_from" DATE NOT NULL,
  "notes" TEXT,
  "ended_day" DATE,
  "end_why" TEXT,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  "archived_at" TIMESTAMPTZ(3),
  CONSTRAINT "agreement_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "agreement_site" FOREIGN KEY ("company_id", "site_id") REFERENCES "site" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "agreement_softener" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "agreement_customer" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "agreement_kind_check" CHECK (kind IN ('visits', 'salt', 'rental')),
  CONSTRAINT "agreement_end_why_check" CHECK (end_why IN ('asked', 'sold', 'erased', 'mistake')),
  CONSTRAINT "agreement_ended_check" CHECK ((ended_day IS NULL) = (end_why IS NULL)),
  CONSTRAINT "agreement_rule_check" CHECK (rule LIKE 'FREQ=%' AND counts_from >= first_day)
);
CREATE INDEX "agreement_company_id_site_id_idx" ON "agreement" ("company_id", "site_id");
CREATE INDEX "agreement_company_id_softener_id_idx" ON "agreement" ("company_id", "softener_id");
CREATE INDEX "agreement_company_id_customer_id_idx" ON "agreement" ("company_id", "customer_id");

CREATE TABLE "agreement_term" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "agreement_id" UUID NOT NULL,
  "from_day" DATE NOT NULL,
  "until_day" DATE,
  "price_minor" INTEGER,
  "price_per" TEXT NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "agreement_term_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "agreement_term_agreement" FOREIGN KEY ("company_id", "agreement_id") REFERENCES "agreement" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "agreement_term_price_per_check" CHECK (price_per IN ('turn', 'month', 'year')),
  CONSTRAINT "agreement_term_price_minor_check" CHECK (price_minor >= 0),
  CONSTRAINT "agreement_term_days_check" CHECK (until_day >= from_day)
);
CREATE UNIQUE INDEX "agreement_term_company_id_agreement_id_from_day_key" ON "agreement_term" ("company_id", "agreement_id", "from_day");

CREATE TABLE "agreement_turn" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "agreement_id" UUID NOT NULL,
  "due_day" DATE NOT NULL,
  "state" TEXT NOT NULL,
  "job_id" UUID,
  "done_day" DATE,
  "reason" TEXT,
  CONSTRAINT "agreement_turn_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "agreement_turn_agreement" FOREIGN KEY ("company_id", "agreement_id") REFERENCES "agreement" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "agreement_turn_job" FOREIGN KEY ("company_id", "job_id") REFERENCES "job" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "agreement_turn_state_check" CHECK (state IN ('proposed', 'done', 'skipped')),
  CONSTRAINT "agreement_turn_done_check" CHECK ((state = 'done') = (done_day IS NOT NULL))
);
-- One row a turn: two people who propose a month at once make one job of it.
CREATE UNIQUE INDEX "agreement_turn_company_id_agreement_id_due_day_key" ON "agreement_turn" ("company_id", "agreement_id", "due_day");
CREATE INDEX "agreement_turn_company_id_job_id_idx" ON "agreement_turn" ("company_id", "job_id");

SELECT almanac_secure_table('agreement'::regclass, 'SELECT, INSERT, UPDATE');
SELECT almanac_secure_table('agreement_term'::regclass, 'SELECT, INSERT');
SELECT almanac_secure_table('agreement_turn'::regclass, 'SELECT, INSERT, UPDATE');
