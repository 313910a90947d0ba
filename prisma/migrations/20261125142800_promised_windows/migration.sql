-- Arrival windows: what a customer is offered and promised, and the addresses of technicians' calendars.
SET lock_timeout = '5s';

CREATE TABLE "window_offer" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "job_id" UUID NOT NULL,
  "state" TEXT NOT NULL,
  "expires_at" TIMESTAMPTZ(3) NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "window_offer_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "window_offer_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "window_offer_state_check" CHECK (state IN ('open', 'confirmed', 'withdrawn', 'lapsed'))
);
CREATE INDEX "window_offer_company_id_job_id_idx" ON "window_offer" ("company_id", "job_id");
CREATE INDEX "window_offer_company_id_state_expires_at_idx" ON "window_offer" ("company_id", "state", "expires_at");
-- One open offer a job.
ALTER TABLE "window_offer" ADD CONSTRAINT window_offer_one_open EXCLUDE USING btree (company_id WITH =, job_id WITH =) WHERE (state = 'open');

CREATE TABLE "calendar_feed" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "colleague_id" UUID NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  "ended_at" TIMESTAMPTZ(3),
  CONSTRAINT "calendar_feed_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "calendar_feed_company_id_colleague_id_fkey" FOREIGN KEY ("company_id", "colleague_id") REFERENCES "colleague" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE
);
CREATE INDEX "calendar_feed_company_id_colleague_id_idx" ON "calendar_feed" ("company_id", "colleague_id");

-- A visit that is held for a customer to choose stands in the state 'offered': its people and vehicle are taken like any visit's.
ALTER TABLE "visit" ADD COLUMN "offer_id" UUID, ADD COLUMN "arrive_from" TIMESTAMPTZ(3), ADD COLUMN "arrive_until" TIMESTAMPTZ(3);
ALTER TABLE "visit" ADD CONSTRAINT "visit_company_id_offer_id_fkey" FOREIGN KEY ("company_id", "offer_id") REFERENCES "window_offer" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "visit" DROP CONSTRAINT "visit_state_check", ADD CONSTRAINT "visit_state_check" CHECK (state IN ('offered', 'booked', 'under-way', 'closed', 'called-off'));
ALTER TABLE "visit" ADD CONSTRAINT "visit_arrival_check" CHECK ((arrive_from IS NULL) = (arrive_until IS NULL) AND (arrive_from IS NULL OR arrive_from < arrive_until));
CREATE INDEX "visit_company_id_offer_id_idx" ON "visit" ("company_id", "offer_id");

SELECT almanac_secure_table('window_offer'::regclass, 'SELECT, INSERT, UPDATE');
SELECT almanac_secure_table('calendar_feed'::regclass, 'SELECT, INSERT, UPDATE');
