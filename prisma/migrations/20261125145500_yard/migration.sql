-- Where crews start and end their days, so that drives can be worked out.
SET lock_timeout = '5s';
ALTER TABLE "company_settings" ADD COLUMN "yard_latitude" DOUBLE PRECISION, ADD COLUMN "yard_longitude" DOUBLE PRECISION;
ALTER TABLE "company_settings" ADD CONSTRAINT "company_settings_yard_check"
  CHECK ((yard_latitude IS NULL OR abs(yard_latitude) <= 90) AND (yard_longitude IS NULL OR abs(yard_longitude) <= 180));
