-- A file is read by the worker and not while whoever sent it waits; until then it stands here, in pieces.
SET lock_timeout = '5s';

ALTER TABLE "import_batch" DROP CONSTRAINT "import_batch_state_check";
ALTER TABLE "import_batch" ADD CONSTRAINT "import_batch_state_check"
  CHECK (state IN ('reading', 'refused', 'draft', 'queued', 'applying', 'applied', 'undone', 'failed'));
-- One of a company at a time: each holds up to 20 MB here.
CREATE UNIQUE INDEX "import_batch_one_reading" ON "import_batch" ("company_id") WHERE state = 'reading';

CREATE TABLE "import_file_piece" (
  "company_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "batch_id" UUID NOT NULL,
  "place" INTEGER NOT NULL,
  "bytes" BYTEA NOT NULL,
  CONSTRAINT "import_file_piece_pkey" PRIMARY KEY ("company_id", "id"),
  CONSTRAINT "import_file_piece_batch" FOREIGN KEY ("company_id", "batch_id") REFERENCES "import_batch" ("company_id", "id") ON DELETE RESTRICT
);
SELECT almanac_secure_table('import_file_piece'::regclass, 'SELECT, INSERT, UPDATE, DELETE');
CREATE UNIQUE INDEX "import_file_piece_place" ON "import_file_piece" ("company_id", "batch_id", "place");
