-- A calendar address is of one colleague's visits, or of all day sheets of the company: then it is of whoever in the office asked for it.
SET lock_timeout = '5s';

ALTER TABLE "calendar_feed"
  ALTER COLUMN "colleague_id" DROP NOT NULL,
  ADD COLUMN "person_id" UUID,
  ADD CONSTRAINT "calendar_feed_of_one" CHECK (("colleague_id" IS NULL) <> ("person_id" IS NULL));
CREATE INDEX "calendar_feed_company_id_person_id_idx" ON "calendar_feed" ("company_id", "person_id");
