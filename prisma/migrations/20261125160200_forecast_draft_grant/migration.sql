-- Drafts are a projection like the forecasts they become: the same grants.
SET lock_timeout = '5s';
GRANT UPDATE ON "forecast_draft" TO almanac_app;
