-- An address that mail came back from is marked by itself, so that the mark ends when the address is corrected, whoever corrects it.
SET lock_timeout = '5s';

ALTER TABLE "contact" ADD COLUMN "dead_email" TEXT;
