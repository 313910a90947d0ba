-- A plan may also say who goes with whom on a day.
SET lock_timeout = '5s';

ALTER TABLE "plan_proposal" DROP CONSTRAINT "plan_proposal_kind_check",
  ADD CONSTRAINT "plan_proposal_kind_check" CHECK (kind IN ('week', 'sheet-off', 'fewer-people', 'other-vehicle', 'crews'));
