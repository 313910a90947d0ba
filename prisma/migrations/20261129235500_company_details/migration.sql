-- A company's owner changes its name and its paper too; of the company in scope alone, by the policy that lets it change its locale.
SET lock_timeout = '5s';

GRANT UPDATE ("name", "paper") ON "company" TO almanac_app;
