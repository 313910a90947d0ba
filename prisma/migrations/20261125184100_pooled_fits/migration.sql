-- Learning together with other firms: off unless the owner switches it on.
SET lock_timeout = '5s';

ALTER TABLE "company_settings" ADD COLUMN "pool_fits" BOOLEAN NOT NULL DEFAULT false;
-- The figures of a fit that other firms may start from; written only while the firm takes part.
ALTER TABLE "forecast_fit" ADD COLUMN "shared" JSONB;

-- The second way across companies for the app: the newest shared figures of every other firm that takes part, to a firm that takes part; to any other, nothing.
-- Figures only: no company, no id, no day. Row security stays forced for its owner, so it looks into one company after the other, and ends where it began.
CREATE FUNCTION almanac_pooled_fits() RETURNS SETOF jsonb LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  asker constant uuid := nullif(current_setting('app.company_id', true), '')::uuid;
  other uuid;
  figures jsonb;
BEGIN
  IF asker IS NULL OR NOT EXISTS (SELECT FROM company_settings WHERE company_id = asker AND pool_fits) THEN RETURN; END IF;
  FOR other IN SELECT id FROM company WHERE id <> asker ORDER BY id LOOP
    PERFORM set_config('app.company_id', other::text, true);
    SELECT f.shared INTO figures FROM forecast_fit f
      WHERE f.company_id = other AND f.shared IS NOT NULL AND EXISTS (SELECT FROM company_settings s WHERE s.company_id = other AND s.pool_fits)
      ORDER BY f.finished_at DESC, f.id DESC LIMIT 1;
    IF FOUND THEN RETURN NEXT figures; END IF;
  END LOOP;
  PERFORM set_config('app.company_id', asker::text, true);
END $$;
REVOKE ALL ON FUNCTION almanac_pooled_fits() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION almanac_pooled_fits() TO almanac_app;
