-- A softener is found by its label, which holds its model, and by its valve's card. New and changed sites get these tokens from the app; those on record get
-- them here. A label with letters beyond ASCII gets its tokens when its site or softener is changed next.
SET lock_timeout = '5s';

SELECT almanac_for_each_company(
  $$INSERT INTO search_token (company_id, token, site_id)
    SELECT DISTINCT s.company_id, left(substr(w, n), 24), s.site_id
    FROM softener s
    JOIN site p ON p.company_id = s.company_id AND p.id = s.site_id AND p.archived_at IS NULL,
      regexp_split_to_table(lower(replace(s.label, '''', '')), '[^a-z0-9]+') w,
      generate_series(1, greatest(1, length(w) - 1)) n
    WHERE s.archived_at IS NULL AND s.label ~ '^[ -~]+$' AND w <> ''
      AND w NOT IN ('softener', 'house', 'plant', 'twin', 'water', 'system', 'unit')
    ON CONFLICT DO NOTHING$$,
  $$SELECT count(*) FROM softener s
    JOIN site p ON p.company_id = s.company_id AND p.id = s.site_id AND p.archived_at IS NULL,
      regexp_split_to_table(lower(replace(s.label, '''', '')), '[^a-z0-9]+') w
    WHERE s.archived_at IS NULL AND s.label ~ '^[ -~]+$' AND w <> ''
      AND w NOT IN ('softener', 'house', 'plant', 'twin', 'water', 'system', 'unit')
      AND NOT EXISTS (SELECT FROM search_token t WHERE t.company_id = s.company_id AND t.token = left(w, 24) COLLATE "C" AND t.site_id = s.site_id)$$
);
SELECT almanac_for_each_company(
  $$INSERT INTO search_token (company_id, token, site_id)
    SELECT DISTINCT v.company_id, '#' || v.card_id, s.site_id
    FROM valve v
    JOIN softener s ON s.company_id = v.company_id AND s.id = v.softener_id AND s.archived_at IS NULL
    JOIN site p ON p.company_id = s.company_id AND p.id = s.site_id AND p.archived_at IS NULL
    WHERE v.archived_at IS NULL AND v.card_id IS NOT NULL
    ON CONFLICT DO NOTHING$$,
  $$SELECT count(*) FROM valve v
    JOIN softener s ON s.company_id = v.company_id AND s.id = v.softener_id AND s.archived_at IS NULL
    JOIN site p ON p.company_id = s.company_id AND p.id = s.site_id AND p.archived_at IS NULL
    WHERE v.archived_at IS NULL AND v.card_id IS NOT NULL
      AND NOT EXISTS (SELECT FROM search_token t WHERE t.company_id = s.company_id AND t.token = ('#' || v.card_id) COLLATE "C" AND t.site_id = s.site_id)$$
);
