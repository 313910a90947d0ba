-- A firm says whether its days are planned by the usual lengths, or so that they end late at most one day in ten.
SET lock_timeout = '5s';

ALTER TABLE "company_settings" ADD COLUMN "day_fill" TEXT NOT NULL DEFAULT 'usual';
ALTER TABLE "company_settings" ADD CONSTRAINT "company_settings_day_fill_check" CHECK (day_fill IN ('usual', 'one-in-ten'));
