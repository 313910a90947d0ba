-- The first day a bed was seen working, beside the last: a bed of unknown beginning went in before it. Each new sight overwrote the one before; the database
-- itself keeps the first now, wherever the last is written. Without a day last seen there is none.
SET lock_timeout = '5s';

ALTER TABLE "bed" ADD COLUMN "first_seen_day" DATE;

CREATE FUNCTION almanac_keep_first_sight() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  -- LEAST passes over what is null.
  NEW.first_seen_day := CASE WHEN NEW.last_seen_day IS NULL THEN NULL ELSE LEAST(NEW.first_seen_day, NEW.last_seen_day) END;
  RETURN NEW;
END $$;
CREATE TRIGGER "bed_first_sight" BEFORE INSERT OR UPDATE ON "bed" FOR EACH ROW EXECUTE FUNCTION almanac_keep_first_sight();

-- Inspections and finished work that left it running are sights as well, and are read with them: what is stored begins with the day last seen.
SELECT almanac_for_each_company(
  $$UPDATE bed SET first_seen_day = last_seen_day WHERE last_seen_day IS NOT NULL AND first_seen_day IS NULL$$,
  $$SELECT count(*) FROM bed WHERE last_seen_day IS NOT NULL AND first_seen_day IS NULL$$);
