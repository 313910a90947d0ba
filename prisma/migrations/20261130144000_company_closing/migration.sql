-- A company is closed by its owner: from then on nobody but its owners comes in, and on a day that is kept here everything of it is erased, unless they take it back.
SET lock_timeout = '5s';

ALTER TABLE "company" ADD COLUMN "closing_since" TIMESTAMPTZ(3);
ALTER TABLE "company" ADD COLUMN "closes_at" TIMESTAMPTZ(3);
-- Set by the erasing alone: its owners may go then.
ALTER TABLE "company" ADD COLUMN "erased_since" TIMESTAMPTZ(3);
ALTER TABLE "company" ADD CONSTRAINT "company_closing_check" CHECK (("closes_at" IS NULL) = ("closing_since" IS NULL) AND "closes_at" > "closing_since");
GRANT UPDATE ("closing_since", "closes_at") ON "company" TO almanac_app;

-- Whoever may not come in any more is told so at once, on whatever they have open: ids and nothing more.
CREATE FUNCTION almanac_tell_closing() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  PERFORM pg_notify('almanac_change', json_build_object('company', m.company_id, 'entity', 'member', 'id', m.person_id)::text)
    FROM membership m WHERE m.company_id = NEW.id AND m.ended_at IS NULL;
  RETURN NULL;
END $$;
REVOKE ALL ON FUNCTION almanac_tell_closing() FROM PUBLIC;
CREATE TRIGGER company_tells_closing AFTER UPDATE OF "closes_at" ON "company" FOR EACH ROW
  WHEN (OLD.closes_at IS DISTINCT FROM NEW.closes_at) EXECUTE FUNCTION almanac_tell_closing();

-- A company that is being erased needs no owner.
CREATE OR REPLACE FUNCTION almanac_keep_an_owner() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('owners of ' || OLD.company_id, 0));
  IF NOT EXISTS (SELECT FROM membership WHERE company_id = OLD.company_id AND role = 'owner' AND ended_at IS NULL)
    AND NOT EXISTS (SELECT FROM company WHERE id = OLD.company_id AND erased_since IS NOT NULL) THEN
    RAISE EXCEPTION 'membership_keeps_an_owner: a company keeps an owner' USING ERRCODE = 'check_violation', CONSTRAINT = 'membership_keeps_an_owner', TABLE = 'membership';
  END IF;
  RETURN NULL;
END $$;

-- Erases the company in scope once its day has come: each of its rows in each table, its tasks, and those of its people who never belonged to another. It runs as the
-- tables' owner under forced row security, so it sees the company in scope and no other. Answers how many rows went; refuses a company whose day has not come.
CREATE FUNCTION almanac_erase_company(at timestamptz) RETURNS bigint LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  mine constant uuid := nullif(current_setting('app.company_id', true), '')::uuid;
  part record;
  went bigint;
  gone bigint := 0;
  blocked boolean;
  moved boolean;
  loosened boolean := false;
  people uuid[];
BEGIN
  UPDATE company SET erased_since = at WHERE id = mine AND closes_at <= at;
  IF NOT FOUND THEN RAISE EXCEPTION 'no company in scope is to be erased by then'; END IF;
  LOOP
    blocked := false;
    moved := false;
    -- What is referred to goes once what refers to it is gone: round after round, whatever tables there are.
    FOR part IN SELECT c.oid::regclass AS tab FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'company_id' AND NOT a.attisdropped
      WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relforcerowsecurity ORDER BY c.relname
    LOOP
      BEGIN
        EXECUTE format('DELETE FROM %s WHERE company_id = $1', part.tab) USING mine;
        GET DIAGNOSTICS went = ROW_COUNT;
        gone := gone + went;
        moved := moved OR went > 0;
      EXCEPTION WHEN foreign_key_violation OR restrict_violation THEN blocked := true;
      END;
    END LOOP;
    EXIT WHEN NOT blocked;
    CONTINUE WHEN moved;
    IF loosened THEN RAISE EXCEPTION 'rows hold each other: the company could not be erased'; END IF;
    -- A bed began on a visit for a job of a bed: such circles are opened where a reference may be empty.
    loosened := true;
    FOR part IN SELECT k.conrelid::regclass AS tab, a.attname AS col FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid
      JOIN pg_attribute a ON a.attrelid = k.conrelid AND a.attnum = ANY (k.conkey) AND a.attname <> 'company_id' AND NOT a.attnotnull
      WHERE k.contype = 'f' AND k.connamespace = 'public'::regnamespace AND c.relforcerowsecurity
    LOOP
      BEGIN
        EXECUTE format('UPDATE %s SET %I = NULL WHERE company_id = $1 AND %I IS NOT NULL', part.tab, part.col, part.col) USING mine;
      EXCEPTION WHEN check_violation OR raise_exception THEN NULL;
      END;
    END LOOP;
  END LOOP;
  IF to_regclass('queue.job') IS NOT NULL THEN DELETE FROM queue.job WHERE data->>'companyId' = mine::text; END IF;
  DELETE FROM identity_event WHERE company_id = mine;
  DELETE FROM one_time_link WHERE company_id = mine;
  UPDATE session SET active_company_id = NULL WHERE active_company_id = mine;
  SELECT coalesce(array_agg(person_id), '{}') INTO people FROM membership WHERE company_id = mine;
  DELETE FROM membership WHERE company_id = mine;
  SELECT coalesce(array_agg(id), '{}') INTO people FROM person p WHERE id = ANY (people) AND NOT EXISTS (SELECT FROM membership m WHERE m.person_id = p.id);
  DELETE FROM verification v USING person p WHERE p.id = ANY (people) AND (position(p.email IN v.identifier) > 0 OR position(p.id::text IN v.value) > 0);
  DELETE FROM one_time_link l USING person p WHERE p.id = ANY (people) AND l.email = p.email;
  DELETE FROM request_window WHERE key = ANY (people::text[]);
  DELETE FROM person WHERE id = ANY (people);
  DELETE FROM company WHERE id = mine;
  RETURN gone;
END $$;
REVOKE ALL ON FUNCTION almanac_erase_company(timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION almanac_erase_company(timestamptz) TO almanac_app;
