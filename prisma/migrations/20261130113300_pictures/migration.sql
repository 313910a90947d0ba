-- Photographs of a visit and the customer's signature. The rows say what there is; the bytes lie in the store of files under the same id.
SET lock_timeout = '5s';

CREATE TABLE "picture" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "visit_id" UUID NOT NULL,
  "kind" TEXT NOT NULL,
  "state" TEXT NOT NULL,
  "taken_at" TIMESTAMPTZ(3) NOT NULL,
  "person_id" UUID NOT NULL,
  "sent_bytes" INTEGER NOT NULL,
  "sent_sha256" TEXT NOT NULL,
  "bytes" INTEGER,
  "sha256" TEXT,
  "width" INTEGER,
  "height" INTEGER,
  "begun_at" TIMESTAMPTZ(3) NOT NULL,
  "stored_at" TIMESTAMPTZ(3),
  CONSTRAINT "picture_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "picture_visit" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "picture_kind_check" CHECK (kind IN ('label', 'as-found', 'old-bed', 'as-left', 'signature')),
  CONSTRAINT "picture_state_check" CHECK (state IN ('coming', 'stored', 'erased', 'gone')),
  CONSTRAINT "picture_sent_check" CHECK (sent_bytes > 0 AND sent_sha256 ~ '^[0-9a-f]{64}$'),
  -- What is kept is known by its size and its sum; nothing is said to be kept of which nobody knows what it was.
  CONSTRAINT "picture_stored_check" CHECK (
    state <> 'stored' OR (bytes > 0 AND sha256 ~ '^[0-9a-f]{64}$' AND width > 0 AND height > 0 AND stored_at IS NOT NULL)
  )
);
CREATE INDEX "picture_company_id_visit_id_idx" ON "picture" ("company_id", "visit_id");
-- What is still to be sent or to be taken away: looked through every night.
CREATE INDEX "picture_company_id_state_idx" ON "picture" ("company_id", "state");

CREATE TABLE "signature" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1,
  "visit_id" UUID NOT NULL,
  "answer" TEXT NOT NULL,
  "name" TEXT,
  "at" TIMESTAMPTZ(3) NOT NULL,
  "person_id" UUID NOT NULL,
  "picture_id" UUID,
  CONSTRAINT "signature_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "signature_visit" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "signature_picture" FOREIGN KEY ("company_id", "picture_id") REFERENCES "picture" ("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT "signature_answer_check" CHECK (answer IN ('signed', 'not-there', 'declined')),
  CONSTRAINT "signature_drawn_check" CHECK ((answer = 'signed') = (picture_id IS NOT NULL))
);
CREATE INDEX "signature_company_id_visit_id_idx" ON "signature" ("company_id", "visit_id");
CREATE INDEX "signature_company_id_picture_id_idx" ON "signature" ("company_id", "picture_id");

SELECT almanac_secure_table('picture'::regclass, 'SELECT, INSERT, UPDATE');
SELECT almanac_secure_table('signature'::regclass, 'SELECT, INSERT, UPDATE');
