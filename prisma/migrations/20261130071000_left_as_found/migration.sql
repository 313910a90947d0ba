-- A visit that stopped before anything was opened, because another trade comes first: neither no access nor made safe.
SET lock_timeout = '5s';

ALTER TABLE "visit" DROP CONSTRAINT "visit_outcome_check";
ALTER TABLE "visit" ADD CONSTRAINT "visit_outcome_check" CHECK (outcome IN ('done', 'made-safe', 'left-as-found', 'no-access', 'bed-not-at-fault', 'condemned'));
