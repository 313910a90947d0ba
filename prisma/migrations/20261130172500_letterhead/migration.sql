-- What heads a company's papers besides its name and telephone: the address and licence in lines, the mail, and the logo, whose file lies in the store under the
-- id of this row.
SET lock_timeout = '5s';

ALTER TABLE "company_settings"
  ADD COLUMN "head_address" TEXT,
  ADD COLUMN "head_mail" TEXT,
  ADD COLUMN "head_licence" TEXT,
  ADD COLUMN "logo_width" INTEGER,
  ADD COLUMN "logo_height" INTEGER,
  ADD CONSTRAINT "company_settings_logo_check" CHECK (("logo_width" IS NULL) = ("logo_height" IS NULL) AND "logo_width" > 0 AND "logo_height" > 0);
