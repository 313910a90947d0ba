-- A second step at sign-in: the sign-in library's own table. The secret and the spare codes are encrypted by it with AUTH_SECRET.
SET lock_timeout = '5s';

ALTER TABLE "person" ADD COLUMN "two_factor_enabled" BOOLEAN NOT NULL DEFAULT false;
CREATE TABLE "two_factor" (
  "id" UUID NOT NULL,
  "secret" TEXT NOT NULL,
  "backup_codes" TEXT NOT NULL,
  "user_id" UUID NOT NULL REFERENCES "person" ("id") ON DELETE CASCADE,
  "verified" BOOLEAN DEFAULT true,
  "failed_verification_count" INTEGER DEFAULT 0,
  "locked_until" TIMESTAMPTZ(3),
  CONSTRAINT "two_factor_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "two_factor_user_id_key" ON "two_factor" ("user_id");
GRANT SELECT, INSERT, UPDATE, DELETE ON "two_factor" TO almanac_identity;
