-- A day has lunch, time in hand and public holidays where the firm says so; a visit says when it began, and until when it will last.
SET lock_timeout = '5s';

ALTER TABLE "visit" ADD COLUMN "started_at" TIMESTAMPTZ(3), ADD COLUMN "running_until" TIMESTAMPTZ(3);

ALTER TABLE "company_settings"
  ADD COLUMN "lunch_minutes" INTEGER NOT NULL DEFAULT 0,
  ADD COLUMN "lunch_from_minute" INTEGER NOT NULL DEFAULT 690,
  ADD COLUMN "lunch_until_minute" INTEGER NOT NULL DEFAULT 780,
  ADD COLUMN "in_hand_minutes" INTEGER NOT NULL DEFAULT 0,
  ADD COLUMN "holiday_area" TEXT,
  ADD COLUMN "holidays_worked" TEXT[] NOT NULL DEFAULT '{}';
ALTER TABLE "company_settings"
  ADD CONSTRAINT "company_settings_lunch_check" CHECK (
    lunch_minutes BETWEEN 0 AND 120 AND lunch_from_minute BETWEEN 0 AND 1439 AND lunch_until_minute BETWEEN lunch_from_minute AND 1439
  ),
  ADD CONSTRAINT "company_settings_in_hand_check" CHECK (in_hand_minutes BETWEEN 0 AND 240);
