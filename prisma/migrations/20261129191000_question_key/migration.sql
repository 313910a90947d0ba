-- Which question would sharpen a forecast most, by its key: its words may change. Words of before are turned into keys here; the column with the words is read
-- by the release before alone.
SET lock_timeout = '5s';

ALTER TABLE "bed_forecast" ADD COLUMN "question_key" TEXT;
SELECT almanac_for_each_company(
  $$UPDATE bed_forecast SET question_key = CASE
      WHEN question LIKE 'When did this resin go in?%' THEN 'beginning'
      WHEN question LIKE 'Test free and total chlorine%' THEN 'water-test'
      WHEN question LIKE 'Is the water from the town or a well%' THEN 'disinfectant'
      WHEN question LIKE 'Is the softener still working%' THEN 'last-seen'
      WHEN question LIKE 'Is the resin 8%10%crosslink?' THEN 'crosslink'
      WHEN question LIKE 'Test the raw water for iron%' THEN 'iron'
    END
    WHERE question IS NOT NULL AND refusal IS NULL AND question_key IS NULL$$,
  $$SELECT count(*) FROM bed_forecast WHERE refusal IS NULL AND question_key IS NULL
    AND question ~ '^(When did this resin|Test free and total|Is the water from|Is the softener still|Is the resin 8|Test the raw water)'$$
);
ALTER TABLE "bed_forecast" ADD CONSTRAINT "bed_forecast_question_key_check"
  CHECK (question_key IN ('beginning', 'water-test', 'disinfectant', 'last-seen', 'crosslink', 'iron', 'inspection'));
