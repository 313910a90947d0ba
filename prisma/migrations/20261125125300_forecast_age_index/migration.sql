-- Coming due by age walks an index like the other orders.
SET lock_timeout = '5s';
CREATE INDEX "bed_forecast_company_id_began_middle_day_id_idx" ON "bed_forecast"("company_id", "began_middle_day", "id");
