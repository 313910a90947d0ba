-- Row security. The roles exist already (scripts/roles.sql makes them): migrations only grant to them.
SET lock_timeout = '5s';

REVOKE ALL ON SCHEMA public FROM PUBLIC;
GRANT USAGE ON SCHEMA public TO almanac_app, almanac_identity;

-- The setting names the company in scope; after a scoped transaction it is '' and not null, hence nullif: then no row is visible.
-- Puts one tenant table under forced row security: a policy per command, and the given grants to the app.
-- Later migrations call it for each new table; a test fails for a table that was forgotten.
CREATE FUNCTION almanac_secure_table(target regclass, grants text) RETURNS void LANGUAGE plpgsql AS $$
DECLARE
  mine constant text := 'company_id = (SELECT nullif(current_setting(''app.company_id'', true), '''')::uuid)';
BEGIN
  EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', target);
  EXECUTE format('ALTER TABLE %s FORCE ROW LEVEL SECURITY', target);
  EXECUTE format('CREATE POLICY own_rows_read ON %s FOR SELECT USING (%s)', target, mine);
  EXECUTE format('CREATE POLICY own_rows_add ON %s FOR INSERT WITH CHECK (%s)', target, mine);
  EXECUTE format('CREATE POLICY own_rows_change ON %s FOR UPDATE USING (%s) WITH CHECK (%s)', target, mine, mine);
  EXECUTE format('CREATE POLICY own_rows_remove ON %s FOR DELETE USING (%s)', target, mine);
  EXECUTE format('GRANT %s ON %s TO almanac_app', grants, target);
END $$;
REVOKE ALL ON FUNCTION almanac_secure_table(regclass, text) FROM PUBLIC;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['customer', 'contact', 'consent', 'site', 'tenure', 'water_supply', 'supply_period', 'water_test', 'softener', 'tank', 'valve',
    'brine_tank', 'pre_treatment', 'bed', 'colleague', 'vehicle', 'crew_day', 'job', 'visit', 'assignment', 'vehicle_use', 'stock_item', 'discrepancy',
    'forecast_run', 'reminder', 'message', 'import_batch', 'import_row', 'company_settings']
  LOOP PERFORM almanac_secure_table(t::regclass, 'SELECT, INSERT, UPDATE'); END LOOP;

  -- Projections and who is on a sheet: rewritten, so rows may go.
  FOREACH t IN ARRAY ARRAY['search_token', 'bed_forecast', 'forecast_month', 'crew_day_member']
  LOOP PERFORM almanac_secure_table(t::regclass, 'SELECT, INSERT, UPDATE, DELETE'); END LOOP;

  -- History: append-only by grants.
  FOREACH t IN ARRAY ARRAY['inspection', 'movement', 'forecast_change', 'applied_command', 'audit_entry']
  LOOP PERFORM almanac_secure_table(t::regclass, 'SELECT, INSERT'); END LOOP;
END $$;

-- Global: the app reads the company in scope and no other; the identity login reads all of them, for the company switch.
ALTER TABLE "company" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_in_scope ON "company" FOR SELECT TO almanac_app USING (id = (SELECT nullif(current_setting('app.company_id', true), '')::uuid));
CREATE POLICY company_for_identity ON "company" FOR SELECT TO almanac_identity USING (id IS NOT NULL);
GRANT SELECT ON "company" TO almanac_app, almanac_identity;

-- Identity tables: the app's login has no grant on them at all.
GRANT SELECT, INSERT, UPDATE, DELETE ON "person", "session", "account", "verification", "rate_limit", "request_window" TO almanac_identity;
GRANT SELECT, INSERT, UPDATE ON "membership" TO almanac_identity;

-- The one way across companies for the app: their ids, for the nightly fan-out. Each task then works inside one company.
CREATE FUNCTION almanac_company_ids() RETURNS SETOF uuid LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
  AS 'SELECT id FROM company ORDER BY id';
REVOKE ALL ON FUNCTION almanac_company_ids() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION almanac_company_ids() TO almanac_app;

