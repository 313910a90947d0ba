-- A job says whether it needs a vehicle, where that is not as its kind usually does.
SET lock_timeout = '5s';

ALTER TABLE "job" ADD COLUMN "needs_vehicle" BOOLEAN;
