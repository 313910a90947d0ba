-- A company writes its reminders in its own words: one text for each channel and language. Without a row, or without a body, the standard text holds.
SET lock_timeout = '5s';

CREATE TABLE "own_text" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "channel" TEXT NOT NULL CHECK ("channel" IN ('phone', 'text', 'email', 'letter')),
  "language" TEXT NOT NULL CHECK ("language" IN ('en', 'es')),
  "subject" TEXT,
  "body" TEXT,
  "changed_at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "own_text_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "own_text_whole" CHECK (("subject" IS NULL) = ("body" IS NULL))
);
CREATE UNIQUE INDEX "own_text_company_id_channel_language_key" ON "own_text" ("company_id", "channel", "language");
SELECT almanac_secure_table('own_text'::regclass, 'SELECT, INSERT, UPDATE');
