-- How a company reads numbers, money, days and clocks: a BCP 47 tag. Those who are there already read as they did.
SET lock_timeout = '5s';

ALTER TABLE "company" ADD COLUMN "locale" TEXT NOT NULL DEFAULT 'en-US' CHECK ("locale" ~ '^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$');

-- The one thing of the companies that the app changes, and only of the company in scope.
CREATE POLICY company_locale_in_scope ON "company" FOR UPDATE TO almanac_app
  USING (id = (SELECT nullif(current_setting('app.company_id', true), '')::uuid))
  WITH CHECK (id = (SELECT nullif(current_setting('app.company_id', true), '')::uuid));
GRANT UPDATE ("locale") ON "company" TO almanac_app;
