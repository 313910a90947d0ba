-- A job has at most one visit that is still to come or under way: a booked rebed could be booked again, its kit spoken for twice, and after one
-- close-out nothing could take the other off. Attempts one after another stay possible: closed and called-off visits do not count, nor times that are only offered.
SET lock_timeout = '5s';

-- Of several open visits the one under way stays, else the earliest. The others, and all of a job that is closed, called off or held, come off
-- their sheets as by hand: people and vehicle free, kit returned, the row and an audit entry kept.
SELECT almanac_for_each_company($$
  WITH ranked AS (
    SELECT v.company_id, v.id, v.job_id, v.crew_day_id, j.state AS job_state,
      row_number() OVER (PARTITION BY v.job_id ORDER BY (v.state = 'under-way') DESC, v.starts_at, v.id) AS place
    FROM visit v JOIN job j ON j.company_id = v.company_id AND j.id = v.job_id
    WHERE v.state IN ('booked', 'under-way')
  ), extra AS (
    SELECT * FROM ranked WHERE place > 1 OR job_state IN ('closed', 'called-off', 'held')
  ), people AS (
    UPDATE assignment a SET released = true FROM extra e WHERE a.company_id = e.company_id AND a.visit_id = e.id AND NOT a.released
  ), vehicles AS (
    UPDATE vehicle_use u SET released = true FROM extra e WHERE u.company_id = e.company_id AND u.visit_id = e.id AND NOT u.released
  ), kit AS (
    UPDATE kit_reservation k SET state = 'returned', version = k.version + 1
    FROM extra e WHERE k.company_id = e.company_id AND k.visit_id = e.id AND k.state IN ('reserved', 'picked')
  ), told AS (
    INSERT INTO audit_entry (company_id, id, at, operation, entity, entity_id, detail)
    SELECT company_id, gen_random_uuid(), now(), 'called off', 'visit', id,
      jsonb_build_object('jobId', job_id, 'crewDayId', crew_day_id, 'why', 'its job had another visit, or was over')
    FROM extra
  )
  UPDATE visit v SET state = 'called-off', version = v.version + 1,
    notes = concat_ws(E'\n\n', v.notes, 'Taken off by an update of the program: its job had another visit, or was over.')
  FROM extra e WHERE v.company_id = e.company_id AND v.id = e.id
$$, $$
  SELECT count(*) FROM (
    SELECT 1 FROM visit v JOIN job j ON j.company_id = v.company_id AND j.id = v.job_id WHERE v.state IN ('booked', 'under-way')
    GROUP BY v.job_id HAVING count(*) > 1 OR bool_or(j.state IN ('closed', 'called-off', 'held'))
  ) AS still
$$);

-- A job says what its open visit is, so that it can always go on: one that came back while another visit of it stood there could neither be
-- begun nor taken off, and one that is booked without a visit could not be booked.
SELECT almanac_for_each_company($$
  WITH open_visit AS (SELECT company_id, job_id, state FROM visit WHERE state IN ('booked', 'under-way')),
  right_state AS (
    SELECT j.company_id, j.id, coalesce(o.state, 'proposed') AS state
    FROM job j LEFT JOIN open_visit o ON o.company_id = j.company_id AND o.job_id = j.id
    WHERE j.state IN ('proposed', 'booked', 'under-way') AND j.state <> coalesce(o.state, 'proposed')
  ), told AS (
    INSERT INTO audit_entry (company_id, id, at, operation, entity, entity_id, detail)
    SELECT r.company_id, gen_random_uuid(), now(), r.state, 'job', r.id, jsonb_build_object('from', j.state, 'to', r.state, 'why', 'as its open visit says')
    FROM right_state r JOIN job j ON j.company_id = r.company_id AND j.id = r.id
  )
  UPDATE job j SET state = r.state, version = j.version + 1 FROM right_state r WHERE j.company_id = r.company_id AND j.id = r.id
$$, $$
  SELECT count(*) FROM job j LEFT JOIN visit o ON o.company_id = j.company_id AND o.job_id = j.id AND o.state IN ('booked', 'under-way')
  WHERE j.state IN ('proposed', 'booked', 'under-way') AND j.state <> coalesce(o.state, 'proposed')
$$);

CREATE UNIQUE INDEX visit_one_open ON "visit" (company_id, job_id) WHERE (state IN ('booked', 'under-way'));
