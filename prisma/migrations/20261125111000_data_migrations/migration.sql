-- How a migration changes rows. The tables' owner is under forced row security too: a bare UPDATE in a migration touches no row and says nothing.
SET lock_timeout = '5s';

-- Runs `change` once inside each company, and answers how many rows it touched in all. Afterwards `left_over`, a query for one count, must give 0 in
-- each company: if it does not, it raises, and the migration keeps nothing. A migration calls it and nothing else to change rows:
--   SELECT almanac_for_each_company($$UPDATE job SET minutes = 60 WHERE minutes < 60$$, $$SELECT count(*) FROM job WHERE minutes < 60$$);
CREATE FUNCTION almanac_for_each_company(change text, left_over text) RETURNS bigint LANGUAGE plpgsql AS $$
DECLARE
  before constant text := coalesce(current_setting('app.company_id', true), '');
  company uuid;
  touched bigint;
  remaining bigint;
  total bigint := 0;
BEGIN
  FOR company IN SELECT almanac_company_ids() LOOP
    PERFORM set_config('app.company_id', company::text, true);
    EXECUTE change;
    GET DIAGNOSTICS touched = ROW_COUNT;
    total := total + touched;
    EXECUTE left_over INTO remaining;
    IF remaining IS DISTINCT FROM 0 THEN
      RAISE EXCEPTION 'data migration: % rows of company % are still as before; nothing was kept', coalesce(remaining::text, 'an unknown number of'), company;
    END IF;
  END LOOP;
  PERFORM set_config('app.company_id', before, true);
  RETURN total;
END $$;
REVOKE ALL ON FUNCTION almanac_for_each_company(text, text) FROM PUBLIC;
