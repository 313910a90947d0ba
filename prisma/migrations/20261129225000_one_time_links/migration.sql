-- Ways in: links that work once, companies founded by them, and what the database itself promises of a company's people.
SET lock_timeout = '5s';

-- The token itself is handed over and kept nowhere: what lies here is its SHA-256, of 256 random bits.
CREATE TABLE "one_time_link" (
  "id" UUID NOT NULL,
  "purpose" TEXT NOT NULL CHECK ("purpose" IN ('set-up', 'invitation', 'password', 'email')),
  "token_hash" TEXT NOT NULL CHECK ("token_hash" ~ '^[0-9a-f]{64}$'),
  "company_id" UUID REFERENCES "company" ("id"),
  "role" TEXT CHECK ("role" IN ('owner', 'dispatcher', 'technician')),
  "colleague_id" UUID,
  "person_id" UUID REFERENCES "person" ("id") ON DELETE CASCADE,
  "name" TEXT,
  "email" TEXT,
  "made_by" UUID REFERENCES "person" ("id") ON DELETE SET NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT now(),
  "expires_at" TIMESTAMPTZ(3) NOT NULL,
  "used_at" TIMESTAMPTZ(3),
  "ended_at" TIMESTAMPTZ(3),
  CONSTRAINT "one_time_link_pkey" PRIMARY KEY ("id"),
  CONSTRAINT "one_time_link_of_invitation" CHECK ("purpose" <> 'invitation' OR ("company_id" IS NOT NULL AND "role" IS NOT NULL)),
  CONSTRAINT "one_time_link_of_person" CHECK ("purpose" NOT IN ('password', 'email') OR "person_id" IS NOT NULL)
);
CREATE UNIQUE INDEX "one_time_link_token_hash_key" ON "one_time_link" ("token_hash");
CREATE INDEX "one_time_link_company_id_idx" ON "one_time_link" ("company_id");
CREATE INDEX "one_time_link_person_id_idx" ON "one_time_link" ("person_id");
GRANT SELECT, INSERT, UPDATE ON "one_time_link" TO almanac_identity;

-- What happens to people's ways in now has somebody who did it, and a word such as the role it is about.
ALTER TABLE "identity_event" ADD COLUMN "by_person_id" UUID REFERENCES "person" ("id") ON DELETE SET NULL;
ALTER TABLE "identity_event" ADD COLUMN "word" TEXT CHECK (length("word") <= 80);
CREATE INDEX "identity_event_company_at" ON "identity_event" ("company_id", "at");
ALTER TABLE "identity_event" DROP CONSTRAINT "identity_event_kind_check";
ALTER TABLE "identity_event" ADD CONSTRAINT "identity_event_kind_check" CHECK ("kind" IN ('signed-in', 'sign-in-failed', 'signed-out', 'session-ended',
  'company-changed', 'password-changed', 'name-changed', 'company-founded', 'invited', 'invitation-withdrawn', 'joined', 'role-changed', 'access-ended',
  'password-link-made', 'password-set', 'email-changed', 'second-factor-on', 'second-factor-off', 'passkey-added', 'passkey-removed'));

-- What a company prints on.
ALTER TABLE "company" ADD COLUMN "paper" TEXT NOT NULL DEFAULT 'letter' CHECK ("paper" IN ('letter', 'a4'));
UPDATE "company" SET "paper" = 'a4' WHERE "unit_system" <> 'us';

-- A company is founded by a set-up link and by nothing else. Sign-in's login may add no company: this does, once for a link, with the settings, the owner's
-- membership and the first line of the audit trail. False where the link is not known, used, ended or too old; then nothing was changed.
CREATE FUNCTION almanac_found_company(link_hash text, owner uuid, said jsonb) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE founded uuid := (said->>'companyId')::uuid;
BEGIN
  PERFORM FROM one_time_link WHERE token_hash = link_hash AND purpose = 'set-up' AND used_at IS NULL AND ended_at IS NULL AND expires_at > now() FOR UPDATE;
  IF NOT FOUND THEN RETURN false; END IF;
  INSERT INTO company (id, name, time_zone, unit_system, currency, locale, telephone, paper)
    VALUES (founded, said->>'name', said->>'timeZone', said->>'unitSystem', said->>'currency', said->>'locale', said->>'telephone', said->>'paper');
  UPDATE one_time_link SET used_at = now(), company_id = founded, person_id = owner WHERE token_hash = link_hash;
  PERFORM set_config('app.company_id', founded::text, true);
  INSERT INTO company_settings (company_id, id, day_start_minute, day_end_minute)
    VALUES (founded, (said->>'settingsId')::uuid, (said->>'dayStartMinute')::int, (said->>'dayEndMinute')::int);
  INSERT INTO membership (id, person_id, company_id, role) VALUES ((said->>'membershipId')::uuid, owner, founded, 'owner');
  INSERT INTO audit_entry (company_id, id, at, person_id, operation, entity, entity_id, detail)
    VALUES (founded, (said->>'auditId')::uuid, now(), owner, 'set-up: founded', 'company', founded, '{}');
  PERFORM set_config('app.company_id', '', true);
  RETURN true;
END $$;
REVOKE ALL ON FUNCTION almanac_found_company(text, uuid, jsonb) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION almanac_found_company(text, uuid, jsonb) TO almanac_identity;

-- A company always has an owner. Whoever takes the role from an owner, or ends their place, waits for others who do so in the same company and then looks:
-- of two owners who end each other at one moment, one stays.
CREATE FUNCTION almanac_keep_an_owner() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('owners of ' || OLD.company_id, 0));
  IF NOT EXISTS (SELECT FROM membership WHERE company_id = OLD.company_id AND role = 'owner' AND ended_at IS NULL) THEN
    RAISE EXCEPTION 'membership_keeps_an_owner: a company keeps an owner' USING ERRCODE = 'check_violation', CONSTRAINT = 'membership_keeps_an_owner', TABLE = 'membership';
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER membership_keeps_an_owner AFTER UPDATE OR DELETE ON "membership" FOR EACH ROW
  WHEN (OLD.role = 'owner' AND OLD.ended_at IS NULL) EXECUTE FUNCTION almanac_keep_an_owner();

-- Whose place or session ended is told at once to whatever they have open: ids and nothing more, whichever way it was ended.
CREATE FUNCTION almanac_tell_access() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_TABLE_NAME = 'membership' THEN
    PERFORM pg_notify('almanac_change', json_build_object('company', NEW.company_id, 'entity', 'member', 'id', NEW.person_id)::text);
  ELSE
    PERFORM pg_notify('almanac_change', json_build_object('company', m.company_id, 'entity', 'member', 'id', m.person_id)::text)
      FROM membership m WHERE m.person_id = OLD.user_id;
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER membership_tells AFTER INSERT OR UPDATE ON "membership" FOR EACH ROW EXECUTE FUNCTION almanac_tell_access();
CREATE TRIGGER session_tells AFTER DELETE ON "session" FOR EACH ROW EXECUTE FUNCTION almanac_tell_access();
