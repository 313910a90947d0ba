-- A contact's second number stands in a column of its own, where it can be found, called and erased; until now a list's second number was left out.
SET lock_timeout = '5s';

ALTER TABLE "contact" ADD COLUMN "other_phone" TEXT;

-- Whoever is erased may share a number with another contact: as the first number and the address, it is not looked into.
DO $$
DECLARE
  was constant text := pg_get_functiondef('almanac_erase_texts(text, uuid[])'::regprocedure);
  becomes constant text := replace(was, $old$('contact', 'email'),$old$, $new$('contact', 'email'), ('contact', 'other_phone'),$new$);
BEGIN
  IF was = becomes THEN RAISE EXCEPTION 'the columns that are not looked into are not where they were'; END IF;
  EXECUTE becomes;
END $$;
