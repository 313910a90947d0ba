-- The catalogue as the migrator left it, for the check at each start: names of tables, policies, functions, grants. No company's data.
SET lock_timeout = '5s';

CREATE TABLE "catalogue_as_migrated" ("thing" TEXT NOT NULL PRIMARY KEY, "is" TEXT NOT NULL);
ALTER TABLE "catalogue_as_migrated" ENABLE ROW LEVEL SECURITY;
CREATE POLICY catalogue_for_the_check ON "catalogue_as_migrated" FOR SELECT TO almanac_app, almanac_identity USING (thing IS NOT NULL);
GRANT SELECT ON "catalogue_as_migrated" TO almanac_app, almanac_identity;
