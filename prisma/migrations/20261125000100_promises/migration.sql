-- What the database itself guarantees, beyond keys. None of it is in the schema files: Prisma has no words for it.
SET lock_timeout = '5s';

CREATE EXTENSION IF NOT EXISTS btree_gist;

-- Nobody and nothing in two places at once.
ALTER TABLE "assignment" ADD CONSTRAINT assignment_one_place
  EXCLUDE USING gist (company_id WITH =, colleague_id WITH =, tstzrange(starts_at, ends_at) WITH &&) WHERE (NOT released);
ALTER TABLE "vehicle_use" ADD CONSTRAINT vehicle_use_one_place
  EXCLUDE USING gist (company_id WITH =, vehicle_id WITH =, tstzrange(starts_at, ends_at) WITH &&) WHERE (NOT released);

-- One open bed per tank, one holder per site, one open rebed per bed, one tank per place.
ALTER TABLE "bed" ADD CONSTRAINT bed_one_open
  EXCLUDE USING btree (company_id WITH =, tank_id WITH =) WHERE (ended_latest IS NULL AND archived_at IS NULL);
ALTER TABLE "tenure" ADD CONSTRAINT tenure_one_open
  EXCLUDE USING btree (company_id WITH =, site_id WITH =) WHERE (to_day IS NULL);
ALTER TABLE "job" ADD CONSTRAINT job_one_open_rebed
  EXCLUDE USING btree (company_id WITH =, bed_id WITH =)
  WHERE (kind = 'rebed' AND bed_id IS NOT NULL AND state IN ('proposed', 'booked', 'under-way', 'held'));
ALTER TABLE "tank" ADD CONSTRAINT tank_one_position
  EXCLUDE USING btree (company_id WITH =, softener_id WITH =, position WITH =) WHERE (softener_id IS NOT NULL AND archived_at IS NULL);

-- An imported row is the same customer, site or softener only once.
ALTER TABLE "customer" ADD CONSTRAINT customer_one_match
  EXCLUDE USING btree (company_id WITH =, match_key WITH =) WHERE (match_key IS NOT NULL AND archived_at IS NULL);
ALTER TABLE "site" ADD CONSTRAINT site_one_match
  EXCLUDE USING btree (company_id WITH =, match_key WITH =) WHERE (match_key IS NOT NULL AND archived_at IS NULL);
ALTER TABLE "softener" ADD CONSTRAINT softener_one_match
  EXCLUDE USING btree (company_id WITH =, match_key WITH =) WHERE (match_key IS NOT NULL AND archived_at IS NULL);

CREATE UNIQUE INDEX supply_period_one_start ON "supply_period" (company_id, water_supply_id, from_day) NULLS NOT DISTINCT WHERE (withdrawn_at IS NULL);
CREATE UNIQUE INDEX forecast_month_one ON "forecast_month" (company_id, water_supply_id, month) NULLS NOT DISTINCT;

-- Prefix look-ups need byte order, whatever the database's own order is.
ALTER TABLE "search_token" ALTER COLUMN token TYPE text COLLATE "C";

-- Words instead of enums: enum comparison is not leakproof, so it would not use an index under row security.
ALTER TABLE "company" ADD CHECK (unit_system IN ('us', 'metric')), ADD CHECK (currency ~ '^[A-Z]{3}$');
ALTER TABLE "membership" ADD CHECK (role IN ('owner', 'dispatcher', 'technician'));
ALTER TABLE "contact" ADD CHECK (role IN ('payer', 'occupier', 'landlord', 'key-holder'));
ALTER TABLE "consent" ADD CHECK (channel IN ('email', 'phone', 'text', 'letter'));
ALTER TABLE "tenure" ADD CHECK (to_day IS NULL OR from_day IS NULL OR from_day <= to_day);
ALTER TABLE "water_supply" ADD CHECK (kind IN ('town', 'private-well'));
ALTER TABLE "supply_period" ADD CHECK (disinfectant IN ('none', 'free-chlorine', 'chloramine', 'unknown')),
  ADD CHECK (residual_mg_l >= 0 AND residual_mg_l < 50), ADD CHECK (hardness_gpg >= 0 AND hardness_gpg < 500), ADD CHECK (iron_mg_l >= 0 AND iron_mg_l < 200);
ALTER TABLE "water_test" ADD CHECK (point IN ('raw', 'softener-inlet', 'softened')), ADD CHECK (hardness_gpg >= 0), ADD CHECK (free_chlorine_mg_l >= 0),
  ADD CHECK (total_chlorine_mg_l >= 0), ADD CHECK (iron_mg_l >= 0), ADD CHECK (ph >= 0 AND ph <= 14);
ALTER TABLE "softener" ADD CHECK (arrangement IN ('single', 'twin-alternating', 'twin-parallel'));
ALTER TABLE "tank" ADD CHECK (diameter_in > 0 AND diameter_in < 120), ADD CHECK (height_in > 0 AND height_in < 300), ADD CHECK (position > 0);
ALTER TABLE "valve" ADD CHECK (control IN ('meter', 'timer', 'unknown'));
ALTER TABLE "pre_treatment" ADD CHECK (kind IN ('carbon', 'sediment', 'iron-filter'));
ALTER TABLE "bed" ADD CHECK (resin_kind IN ('gel-8', 'gel-10', 'fine-mesh', 'unknown')), ADD CHECK (volume_ft3 > 0 AND volume_ft3 < 500),
  ADD CHECK (began_earliest IS NULL OR began_latest IS NULL OR began_earliest <= began_latest),
  ADD CHECK (ended_earliest IS NULL OR ended_latest IS NULL OR ended_earliest <= ended_latest),
  ADD CHECK ((ended_latest IS NULL) = (end_cause IS NULL));
ALTER TABLE "inspection" ADD CHECK (bead_condition IN ('firm', 'some-soft', 'mushy', 'broken')), ADD CHECK (capacity_share BETWEEN 0 AND 1.5),
  ADD CHECK (moisture_share BETWEEN 0 AND 1);
ALTER TABLE "job" ADD CHECK (kind IN ('rebed', 'annual-visit', 'cleaning', 'inspection', 'repair', 'installation', 'delivery', 'warranty-return', 'emergency')),
  ADD CHECK (state IN ('proposed', 'booked', 'under-way', 'held', 'closed', 'called-off')), ADD CHECK (minutes > 0 AND minutes <= 1440), ADD CHECK (crew_size BETWEEN 1 AND 6);
ALTER TABLE "crew_day" ADD CHECK (starts_at < ends_at);
ALTER TABLE "visit" ADD CHECK (state IN ('booked', 'under-way', 'closed', 'called-off')), ADD CHECK (starts_at < ends_at),
  ADD CHECK (outcome IN ('done', 'made-safe', 'no-access', 'bed-not-at-fault', 'condemned')), ADD CHECK ((state = 'closed') = (outcome IS NOT NULL));
ALTER TABLE "assignment" ADD CHECK (starts_at < ends_at);
ALTER TABLE "vehicle_use" ADD CHECK (starts_at < ends_at);
ALTER TABLE "movement" ADD CHECK (reason IN ('received', 'used', 'counted', 'returned'));
ALTER TABLE "reminder" ADD CHECK (state IN ('waiting', 'held', 'released', 'dropped'));
ALTER TABLE "message" ADD CHECK (state IN ('outbox', 'sending', 'sent', 'uncertain', 'withdrawn'));
ALTER TABLE "import_batch" ADD CHECK (state IN ('draft', 'queued', 'applying', 'applied', 'undone', 'failed'));
ALTER TABLE "import_row" ADD CHECK (status IN ('pending', 'created', 'updated', 'unchanged', 'problem'));
ALTER TABLE "company_settings" ADD CHECK (reminder_lead_days BETWEEN 0 AND 730), ADD CHECK (rebeds_per_month BETWEEN 0 AND 100000),
  ADD CHECK (day_start_minute >= 0 AND day_start_minute < day_end_minute AND day_end_minute <= 1440);
