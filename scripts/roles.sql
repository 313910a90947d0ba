-- The roles that Rebed Almanac needs, once for each PostgreSQL cluster. Run as a superuser (or a role with CREATEROLE); safe to run again.
--   almanac_owner            owns the database and its tables and runs migrations; no superuser, cannot bypass row security
--   almanac_app              what the app may do: migrations grant to this name
--   almanac_identity         what sign-in may do: migrations grant to this name
--   almanac_app_login        the login of web and worker
--   almanac_identity_login   the login of sign-in
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'almanac_owner') THEN CREATE ROLE almanac_owner; END IF;
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'almanac_app') THEN CREATE ROLE almanac_app; END IF;
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'almanac_identity') THEN CREATE ROLE almanac_identity; END IF;
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'almanac_app_login') THEN CREATE ROLE almanac_app_login; END IF;
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'almanac_identity_login') THEN CREATE ROLE almanac_identity_login; END IF;
END
$$;
ALTER ROLE almanac_owner LOGIN NOCREATEROLE;
ALTER ROLE almanac_app NOLOGIN NOCREATEDB NOCREATEROLE;
ALTER ROLE almanac_identity NOLOGIN NOCREATEDB NOCREATEROLE;
ALTER ROLE almanac_app_login LOGIN INHERIT NOCREATEDB NOCREATEROLE;
ALTER ROLE almanac_identity_login LOGIN INHERIT NOCREATEDB NOCREATEROLE;
GRANT almanac_app TO almanac_app_login;
GRANT almanac_identity TO almanac_identity_login;
-- However a login connects, also through a pooler: nobody waits long for a lock, or sits in a transaction.
ALTER ROLE almanac_app_login SET lock_timeout = '10s';
ALTER ROLE almanac_app_login SET idle_in_transaction_session_timeout = '60s';
ALTER ROLE almanac_identity_login SET lock_timeout = '10s';
ALTER ROLE almanac_identity_login SET idle_in_transaction_session_timeout = '60s';
