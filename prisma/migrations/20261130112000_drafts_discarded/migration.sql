-- A file that was read and never brought in can be discarded: its rows are emptied, and only its name stays.
SET lock_timeout = '5s';

ALTER TABLE "import_batch" DROP CONSTRAINT "import_batch_state_check";
ALTER TABLE "import_batch" ADD CONSTRAINT "import_batch_state_check"
  CHECK (state IN ('reading', 'refused', 'draft', 'discarded', 'queued', 'applying', 'applied', 'undone', 'failed'));
