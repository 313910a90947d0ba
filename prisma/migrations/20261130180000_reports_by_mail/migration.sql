-- A service report goes to the customer by mail: a message of a visit, with its PDF. The bytes lie in the store of files under the message's id.
SET lock_timeout = '5s';

ALTER TABLE "message"
  ADD COLUMN "visit_id" UUID,
  ADD COLUMN "file_name" TEXT,
  ADD COLUMN "file_state" TEXT,
  ADD COLUMN "file_bytes" INTEGER,
  ADD COLUMN "file_sha256" TEXT,
  ADD CONSTRAINT "message_file_state_check" CHECK (file_state IN ('stored', 'erased', 'gone')),
  -- What is kept is known by its size and its sum.
  ADD CONSTRAINT "message_file_check" CHECK (
    (file_state IS NULL AND file_name IS NULL AND file_bytes IS NULL AND file_sha256 IS NULL)
    OR (visit_id IS NOT NULL AND file_state IS NOT NULL AND file_name IS NOT NULL AND file_bytes > 0 AND file_sha256 ~ '^[0-9a-f]{64}$')
  ),
  ADD CONSTRAINT "message_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
CREATE INDEX "message_company_id_visit_id_idx" ON "message" ("company_id", "visit_id");

CREATE OR REPLACE FUNCTION almanac_message_step() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF NEW.state IS DISTINCT FROM OLD.state AND (OLD.state, NEW.state) NOT IN (
    ('drafted', 'approved'), ('drafted', 'held'), ('drafted', 'withdrawn'),
    ('approved', 'held'), ('approved', 'withdrawn'), ('approved', 'sent'), ('approved', 'sending'),
    ('held', 'approved'), ('held', 'withdrawn'),
    ('sending', 'sent'), ('sending', 'approved'), ('sending', 'refused'), ('sending', 'uncertain'),
    ('sent', 'bounced'), ('refused', 'approved'),
    ('uncertain', 'sent'), ('uncertain', 'approved'), ('uncertain', 'bounced')) THEN
    RAISE EXCEPTION 'message_step: a message that is % does not become %', OLD.state, NEW.state
      USING ERRCODE = 'check_violation', CONSTRAINT = 'message_step', TABLE = 'message';
  END IF;
  IF OLD.state <> 'drafted' AND (
    (NEW.subject IS DISTINCT FROM OLD.subject AND NEW.subject NOT LIKE '%[erased]%') OR
    (NEW.body IS DISTINCT FROM OLD.body AND NEW.body NOT LIKE '%[erased]%') OR
    (NEW.address IS DISTINCT FROM OLD.address AND NEW.address NOT LIKE '%[erased]%')) THEN
    RAISE EXCEPTION 'message_keeps_words: a message keeps what it said and to whom, unless a person is erased'
      USING ERRCODE = 'check_violation', CONSTRAINT = 'message_keeps_words', TABLE = 'message';
  END IF;
  -- What went with it as well: the file may be taken away, and is never another one.
  IF OLD.file_sha256 IS NOT NULL AND (NEW.file_sha256, NEW.file_bytes, NEW.visit_id) IS DISTINCT FROM (OLD.file_sha256, OLD.file_bytes, OLD.visit_id) THEN
    RAISE EXCEPTION 'message_keeps_words: the file that went with a message is never another one'
      USING ERRCODE = 'check_violation', CONSTRAINT = 'message_keeps_words', TABLE = 'message';
  END IF;
  RETURN NEW;
END $$;
