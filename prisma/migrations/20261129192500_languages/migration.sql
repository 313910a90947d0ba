-- Who reads which language, and where a customer calls. Null: the company's own language; no telephone is given yet.
SET lock_timeout = '5s';

ALTER TABLE "person" ADD COLUMN "language" TEXT CHECK ("language" IN ('en', 'es'));
ALTER TABLE "contact" ADD COLUMN "language" TEXT CHECK ("language" IN ('en', 'es'));
ALTER TABLE "company" ADD COLUMN "telephone" TEXT CHECK (length("telephone") BETWEEN 3 AND 40);

-- Of the company in scope alone, by the policy that lets it change its locale.
GRANT UPDATE ("telephone") ON "company" TO almanac_app;
