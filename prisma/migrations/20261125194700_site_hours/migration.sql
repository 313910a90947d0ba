-- When a site takes visits: kitchens and boiler rooms have their quiet hours. Empty and null: at any time.
SET lock_timeout = '5s';

ALTER TABLE "site"
  ADD COLUMN "visit_weekdays" INTEGER[] NOT NULL DEFAULT '{}' CHECK ("visit_weekdays" <@ ARRAY[1, 2, 3, 4, 5, 6, 7]),
  ADD COLUMN "visit_from" TEXT CHECK ("visit_from" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
  ADD COLUMN "visit_until" TEXT CHECK ("visit_until" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
  ADD CONSTRAINT "site_visit_hours_in_order" CHECK ("visit_from" IS NULL OR "visit_until" IS NULL OR "visit_from" < "visit_until");
