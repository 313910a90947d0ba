-- Passkeys: the sign-in library's own table, with what somebody added one on and when it last signed them in. A public key is no secret, but none of it leaves.
SET lock_timeout = '5s';

CREATE TABLE "passkey" (
  "id" UUID NOT NULL,
  "name" TEXT,
  "public_key" TEXT NOT NULL,
  "user_id" UUID NOT NULL REFERENCES "person" ("id") ON DELETE CASCADE,
  "credential_id" TEXT NOT NULL,
  -- An unsigned number of 32 bits (Web Authentication, section 6.1.1), which the library reads as a plain one.
  "counter" DOUBLE PRECISION NOT NULL,
  "device_type" TEXT NOT NULL,
  "backed_up" BOOLEAN NOT NULL,
  "transports" TEXT,
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT now(),
  "aaguid" TEXT,
  "user_agent" TEXT,
  "last_used_at" TIMESTAMPTZ(3),
  CONSTRAINT "passkey_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "passkey_credential_id_key" ON "passkey" ("credential_id");
CREATE INDEX "passkey_user_id_idx" ON "passkey" ("user_id");
GRANT SELECT, INSERT, UPDATE, DELETE ON "passkey" TO almanac_identity;
