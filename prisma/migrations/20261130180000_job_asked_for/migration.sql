-- How a job was asked for, by a link or on a call, is kept as facts and said to each reader in their language. Sentences that stand in notes already stay there.
SET lock_timeout = '5s';

ALTER TABLE "job" ADD COLUMN "asked_for" JSONB;
