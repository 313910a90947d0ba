-- A promise says how and by whom it was made: by the customer's link or by telephone. What a visit's window was before it was chosen is no promise.
SET lock_timeout = '5s';

ALTER TABLE "visit" ADD COLUMN "promised_by" TEXT, ADD COLUMN "promised_at" TIMESTAMPTZ(3), ADD COLUMN "promised_person_id" UUID;
-- Who was told before stands nowhere; the link was the way that was made for it.
SELECT almanac_for_each_company(
  $$UPDATE visit v SET promised_by = 'link', promised_at = coalesce((SELECT o.created_at FROM window_offer o WHERE o.company_id = v.company_id AND o.id = v.offer_id), v.starts_at)
    WHERE v.arrive_from IS NOT NULL AND v.state IN ('booked', 'under-way', 'closed') AND v.promised_by IS NULL$$,
  $$SELECT count(*) FROM visit WHERE arrive_from IS NOT NULL AND state IN ('booked', 'under-way', 'closed') AND promised_by IS NULL$$
);
ALTER TABLE "visit" ADD CONSTRAINT "visit_promised_by_check" CHECK (promised_by IN ('link', 'phone'));
ALTER TABLE "visit" ADD CONSTRAINT "visit_promise_check" CHECK ((promised_by IS NULL) = (promised_at IS NULL) AND (promised_by IS NULL OR arrive_from IS NOT NULL));
-- One entry on the list for a promise, until it is done.
CREATE UNIQUE INDEX call_back_one_open_promise ON "call_back" (company_id, visit_id) WHERE (state = 'open' AND cause = 'promise');
