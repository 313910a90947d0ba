-- Erasing looked through each column of each row by itself: a company with seventy thousand lines of lists waited six seconds, and whoever answered a reminder waited with it.
-- Now a row's texts are looked through at once by `hints`, which are cheap and miss nothing that the pattern finds, and by the pattern only where one of them fits.
SET lock_timeout = '5s';

DROP FUNCTION almanac_erase_texts(text, uuid[]);

-- `within`: only rows that are, or name, one of these records; null for all of the company. `hints`: of whatever the pattern finds the lower-case text is LIKE one of them. Names
-- that a row bears itself (of a customer, a contact, a colleague) are not looked into: two people may have one name. Answers which rows were changed.
CREATE FUNCTION almanac_erase_texts(pattern text, within uuid[], hints text[]) RETURNS TABLE (changed_table text, changed_id uuid)
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  company constant uuid := nullif(current_setting('app.company_id', true), '')::uuid;
  part record;
BEGIN
  IF company IS NULL OR length(pattern) < 3 THEN RAISE EXCEPTION 'no company is in scope, or nothing to look for'; END IF;
  FOR part IN
    SELECT c.oid::regclass AS tab, c.relname::text AS name,
      string_agg(format('%1$I = %2$s', a.attname, CASE a.atttypid
        WHEN 'text'::regtype THEN format('regexp_replace(%I, $1, ''[erased]'', ''gi'')', a.attname)
        WHEN 'jsonb'::regtype THEN format('almanac_erase_in_json(%I, $1)', a.attname)
        ELSE format('(SELECT coalesce(array_agg(regexp_replace(e, $1, ''[erased]'', ''gi'') ORDER BY n), ''{}'') FROM unnest(%I) WITH ORDINALITY AS u(e, n))', a.attname)
      END), ', ') FILTER (WHERE a.atttypid <> 'uuid'::regtype) AS sets,
      string_agg(CASE a.atttypid WHEN 'text[]'::regtype THEN format('array_to_string(%I, chr(10))', a.attname) ELSE format('%I::text', a.attname) END, ', ')
        FILTER (WHERE a.atttypid <> 'uuid'::regtype) AS texts,
      string_agg(CASE a.atttypid WHEN 'text[]'::regtype THEN format('array_to_string(%I, chr(10)) ~* $1', a.attname) ELSE format('%I::text ~* $1', a.attname) END, ' OR ')
        FILTER (WHERE a.atttypid <> 'uuid'::regtype) AS finds,
      string_agg(format('%I = ANY ($3)', a.attname), ' OR ') FILTER (WHERE a.atttypid = 'uuid'::regtype AND a.attname <> 'company_id') AS about
    FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relforcerowsecurity AND c.relname <> 'search_token'
      AND a.atttypid IN ('text'::regtype, 'text[]'::regtype, 'jsonb'::regtype, 'uuid'::regtype)
      AND (c.relname, a.attname) NOT IN (('contact', 'name'), ('contact', 'phone'), ('contact', 'email'), ('contact', 'other_phone'), ('customer', 'name'), ('colleague', 'name'))
    GROUP BY c.oid, c.relname
    HAVING bool_or(a.atttypid <> 'uuid'::regtype)
  LOOP
    -- A CASE is worked out in its order: the closer look only at rows that the first one found.
    RETURN QUERY EXECUTE format('UPDATE %s SET %s WHERE company_id = $2 AND %s AND CASE WHEN lower(concat_ws(chr(10), %s)) LIKE ANY ($4) THEN %s ELSE false END RETURNING %L::text, id',
      part.tab, part.sets, CASE WHEN within IS NULL THEN 'true' ELSE format('(%s)', coalesce(part.about, 'false')) END, part.texts, part.finds, part.name)
      USING pattern, company, within, hints;
  END LOOP;
  -- Tasks carry ids; what a failed one said may quote a name.
  IF within IS NULL AND to_regclass('queue.job') IS NOT NULL THEN
    UPDATE queue.job SET output = almanac_erase_in_json(output, pattern) WHERE data->>'companyId' = company::text AND output::text ~* pattern;
  END IF;
END $$;

REVOKE ALL ON FUNCTION almanac_erase_texts(text, uuid[], text[]) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION almanac_erase_texts(text, uuid[], text[]) TO almanac_app;

-- What names nobody is handed back as it is, however large.
CREATE OR REPLACE FUNCTION almanac_erase_in_json(given jsonb, pattern text) RETURNS jsonb LANGUAGE plpgsql IMMUTABLE SET search_path = public, pg_temp AS $$
BEGIN
  IF given::text !~* pattern THEN RETURN given; END IF;
  CASE jsonb_typeof(given)
    WHEN 'string' THEN RETURN to_jsonb(regexp_replace(given #>> '{}', pattern, '[erased]', 'gi'));
    WHEN 'array' THEN RETURN (SELECT coalesce(jsonb_agg(almanac_erase_in_json(value, pattern) ORDER BY ordinality), '[]') FROM jsonb_array_elements(given) WITH ORDINALITY);
    WHEN 'object' THEN RETURN (SELECT coalesce(jsonb_object_agg(key, almanac_erase_in_json(value, pattern)), '{}') FROM jsonb_each(given));
    ELSE RETURN given;
  END CASE;
END $$;
