-- Two supplies that are one are merged like customers, sites and towns.
SET lock_timeout = '5s';

ALTER TABLE "merging" DROP CONSTRAINT "merging_kind_check";
ALTER TABLE "merging" ADD CONSTRAINT "merging_kind_check" CHECK (kind IN ('customer', 'site', 'town', 'supply'));
