-- A firm's own rules of reminding: how many notices of one window, how far apart, and at which hours at the customer's. As it was for whoever says nothing: one.
SET lock_timeout = '5s';

ALTER TABLE "company_settings"
  ADD COLUMN "reminder_notices" INTEGER NOT NULL DEFAULT 1 CHECK ("reminder_notices" BETWEEN 1 AND 3),
  ADD COLUMN "reminder_again_days" INTEGER NOT NULL DEFAULT 30 CHECK ("reminder_again_days" BETWEEN 7 AND 365),
  -- Not before 8 nor after 9 at their own clock: 47 CFR 64.1200(c)(1).
  ADD COLUMN "send_from_minute" INTEGER NOT NULL DEFAULT 480,
  ADD COLUMN "send_until_minute" INTEGER NOT NULL DEFAULT 1200,
  ADD CONSTRAINT "company_settings_sending_hours" CHECK ("send_from_minute" >= 480 AND "send_from_minute" < "send_until_minute" AND "send_until_minute" <= 1260);
