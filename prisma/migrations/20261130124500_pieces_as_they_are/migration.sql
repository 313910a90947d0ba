-- Pieces of a file stay for minutes: packing them took longer than writing them.
SET lock_timeout = '5s';

ALTER TABLE "import_file_piece" ALTER COLUMN "bytes" SET STORAGE EXTERNAL;
