-- A site, a customer or a softener is archived by somebody, for a reason, and can be brought back. What an undone import archived has none.
SET lock_timeout = '5s';

ALTER TABLE "customer" ADD COLUMN "archive_reason" TEXT CHECK ("archive_reason" IN ('unit-removed', 'left', 'sold', 'closed', 'twice', 'other'));
ALTER TABLE "site" ADD COLUMN "archive_reason" TEXT CHECK ("archive_reason" IN ('unit-removed', 'left', 'sold', 'closed', 'twice', 'other'));
ALTER TABLE "softener" ADD COLUMN "archive_reason" TEXT CHECK ("archive_reason" IN ('unit-removed', 'left', 'sold', 'closed', 'twice', 'other'));
