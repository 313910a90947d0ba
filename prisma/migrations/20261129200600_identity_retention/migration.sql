-- What happened to people's ways in is kept for a year. The login of sign-in still removes nothing by itself: this alone does, and nothing younger.
SET lock_timeout = '5s';

CREATE FUNCTION almanac_forget_identity_events() RETURNS void LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp
  AS 'DELETE FROM identity_event WHERE at < now() - interval ''1 year''';
REVOKE ALL ON FUNCTION almanac_forget_identity_events() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION almanac_forget_identity_events() TO almanac_identity;
CREATE INDEX "identity_event_at" ON "identity_event" ("at");

-- The sign-in library's own counter, which counts nothing: ours are request_window and sign_in_guard.
DROP TABLE "rate_limit";
