-- Sign-in: how often a password was tried, by account, device or place, so that all processes wait alike; and what happened to people's ways in.
SET lock_timeout = '5s';

-- The key is a keyed hash: no e-mail, no address. Rows of an hour ago are swept.
CREATE TABLE "sign_in_guard" (
  "key" TEXT NOT NULL,
  "tries" INTEGER NOT NULL CHECK ("tries" > 0),
  "last_at" TIMESTAMPTZ(3) NOT NULL,
  "blocked_until" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "sign_in_guard_pkey" PRIMARY KEY ("key")
);
CREATE INDEX "sign_in_guard_last_at" ON "sign_in_guard" ("last_at");
GRANT SELECT, INSERT, UPDATE, DELETE ON "sign_in_guard" TO almanac_identity;

-- Who, which session, when: no name, e-mail or address. Failed sign-ins of one account within a minute are one row with their number; person_id is null where
-- there is no such account.
CREATE TABLE "identity_event" (
  "id" UUID NOT NULL,
  "at" TIMESTAMPTZ(3) NOT NULL DEFAULT now(),
  "minute" TIMESTAMPTZ(3) NOT NULL DEFAULT date_trunc('minute', now()),
  "kind" TEXT NOT NULL CHECK ("kind" IN ('signed-in', 'sign-in-failed', 'signed-out', 'session-ended', 'company-changed', 'password-changed', 'name-changed')),
  "person_id" UUID REFERENCES "person" ("id") ON DELETE SET NULL,
  "session_id" UUID,
  "company_id" UUID,
  "count" INTEGER NOT NULL DEFAULT 1 CHECK ("count" > 0),
  CONSTRAINT "identity_event_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "identity_event_failed_once_a_minute" ON "identity_event" ("person_id", "minute") NULLS NOT DISTINCT WHERE "kind" = 'sign-in-failed';
CREATE INDEX "identity_event_person_at" ON "identity_event" ("person_id", "at");
GRANT SELECT, INSERT ON "identity_event" TO almanac_identity;
GRANT UPDATE ("count") ON "identity_event" TO almanac_identity;
