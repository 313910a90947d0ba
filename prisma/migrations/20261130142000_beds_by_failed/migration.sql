-- The list of beds to call about begins with the surest.
SET lock_timeout = '5s';

CREATE INDEX "bed_forecast_company_id_chance_already_failed_id_idx" ON "bed_forecast" ("company_id", "chance_already_failed", "id");
