-- Each word list has one home, packages/records; a test compares it with these checks. Values of before stay valid.
SET lock_timeout = '5s';

-- One set of words for beads: rust-coloured and much resin missing were seen on visits and had no place to go.
ALTER TABLE "inspection" DROP CONSTRAINT "inspection_bead_condition_check",
  ADD CONSTRAINT "inspection_bead_condition_check" CHECK (bead_condition IN ('firm', 'some-soft', 'mushy', 'broken', 'iron-fouled', 'resin-missing'));

-- Words that only the app held so far.
ALTER TABLE "bed" ADD CONSTRAINT "bed_end_cause_check"
  CHECK (end_cause IN ('worn', 'iron-fouled', 'beads-lost', 'oxidised', 'tank-cracked', 'removed-for-convenience', 'unknown'));
-- Consents of the demo said it in words of their own.
SELECT almanac_for_each_company(
  $$UPDATE consent SET source = 'visit', version = version + 1 WHERE source = 'asked at a visit'$$,
  $$SELECT count(*) FROM consent WHERE source NOT IN ('call', 'visit', 'letter', 'link', 'import')$$
);
ALTER TABLE "consent" ADD CONSTRAINT "consent_source_check" CHECK (source IN ('call', 'visit', 'letter', 'link', 'import'));
ALTER TABLE "reminder" ADD CONSTRAINT "reminder_channel_check" CHECK (channel IN ('email', 'phone', 'text', 'letter'));
ALTER TABLE "message" ADD CONSTRAINT "message_channel_check" CHECK (channel IN ('email', 'phone', 'text', 'letter'));
ALTER TABLE "stock_item"
  ADD CONSTRAINT "stock_item_kind_check" CHECK (kind IN ('resin', 'gravel', 'tube', 'cap', 'seal', 'grease', 'sanitiser', 'container', 'other')),
  ADD CONSTRAINT "stock_item_resin_kind_check" CHECK (resin_kind IN ('gel-8', 'gel-10', 'fine-mesh'));

-- A firm's own curve for fine mesh stood under another spelling than the beds that use it.
SELECT almanac_for_each_company(
  $$UPDATE firm_figure SET key = 'curve:fine-mesh', version = version + 1 WHERE key = 'curve:fine-8'$$,
  $$SELECT count(*) FROM firm_figure WHERE key = 'curve:fine-8'$$
);
