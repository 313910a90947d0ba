-- A message is a state machine, and the database holds it: what may have been sent is never sent again by itself, and a message keeps what it said.
-- The table of states and events is service-rules/messages/message-states; a test compares each pair of states with this trigger.
SET lock_timeout = '5s';

ALTER TABLE "message"
  ADD COLUMN "state_reason" TEXT,
  -- How often a server was asked, when it is asked again at the earliest, and since when it is being asked.
  ADD COLUMN "tries" INTEGER NOT NULL DEFAULT 0 CHECK ("tries" >= 0),
  ADD COLUMN "try_after" TIMESTAMPTZ(3),
  ADD COLUMN "sending_since" TIMESTAMPTZ(3),
  -- When it was sent, came back, was refused or withdrawn.
  ADD COLUMN "settled_at" TIMESTAMPTZ(3);

ALTER TABLE "message" DROP CONSTRAINT "message_state_check";
-- What was approved before mails went out from here may have been copied and sent by hand: a person looks before it goes out by itself.
SELECT almanac_for_each_company(
  $$UPDATE message SET version = version + 1,
      state = CASE WHEN channel IN ('email', 'text') THEN 'held' ELSE 'approved' END,
      state_reason = CASE WHEN channel IN ('email', 'text') THEN 'Approved before mail was sent from here. Check that it wasn’t sent by hand.' END
    WHERE state = 'outbox'$$,
  $$SELECT count(*) FROM message WHERE state = 'outbox'$$
);
ALTER TABLE "message" ADD CONSTRAINT "message_state_check"
  CHECK (state IN ('drafted', 'approved', 'held', 'sending', 'sent', 'bounced', 'refused', 'uncertain', 'withdrawn'));
CREATE INDEX "message_to_send" ON "message" ("company_id", "created_at", "id") WHERE (state IN ('approved', 'sending'));

CREATE FUNCTION almanac_message_step() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
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
  RETURN NEW;
END $$;
CREATE TRIGGER message_step BEFORE UPDATE ON "message" FOR EACH ROW EXECUTE FUNCTION almanac_message_step();
