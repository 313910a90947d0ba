import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'

/** Rows written for each bed of a fleet: site, softener, tank, bed, forecast. */
export const ROWS_A_BED = 5

const ROWS = `
  insert into site (company_id, id, label, street, town, water_supply_id)
    select company, site, 'Site ' || n, n || ' Bench Road', 'Town ' || n % 40, supply from fleet;
  insert into softener (company_id, id, site_id, label) select company, softener, site, 'Softener' from fleet;
  insert into tank (company_id, id, softener_id, diameter_in, height_in, size_as_written) select company, tank, softener, 10, 54, '10x54' from fleet;
  insert into bed (company_id, id, tank_id, resin_kind, volume_ft3, began_earliest, began_latest, last_seen_day)
    select company, bed, tank, case n % 3 when 0 then 'gel-10' else 'gel-8' end, 1.5, began, began + n % 7 * 60, greatest(began + n % 7 * 60, day - n % 900) from fleet`

const FORECASTS = `
  insert into bed_forecast (company_id, id, bed_id, site_id, water_supply_id, run_id, as_of_day, computed_at, due10_day, due50_day, due90_day, chance_3_months,
      chance_12_months, chance_24_months, chance_already_failed, began_middle_day, weakness, month_chances, drivers, assumptions, missing)
    select company, uuidv7(), bed, site, supply, run, day, now(), day + n % 1500, day + 400 + n % 3000, day + 2000 + n % 4000, chance / 4, chance, least(1, chance * 1.8),
      chance / 8, began, n % 50 / 10.0, '', '[]', '[]', '[]'
    from (select *, ((n * 7919) % 10000) / 10000.0 as chance from fleet) f`

/**
 * Writes a company with two supplies and `beds` beds, each on a site of its own, in one transaction as the owner of the tables and in the company's scope.
 * With `forecasts` its projection is written too; the month chances stay empty, since Coming due does not read them.
 */
export async function addFleet(owner: pg.Client, name: string, beds: number, day: string, forecasts: boolean): Promise<string> {
  const companyId = newId()
  const [town, well, run] = [newId(), newId(), newId()]
  await owner.query('begin')
  await owner.query("select set_config('app.company_id', $1, true)", [companyId])
  await owner.query("insert into company (id, name, time_zone, unit_system, currency) values ($1, $2, 'Europe/Dublin', 'metric', 'EUR')", [
    companyId,
    name,
  ])
  await owner.query('insert into company_settings (company_id, id, rebeds_per_month) values ($1, $2, 300)', [companyId, newId()])
  for (const [id, kind, disinfectant, residual] of [
    [town, 'town', 'chloramine', 1.5],
    [well, 'private-well', 'none', null],
  ] as const) {
    await owner.query('insert into water_supply (company_id, id, name, kind) values ($1, $2, $3, $4)', [
      companyId,
      id,
      `Supply ${kind}`,
      kind,
    ])
    await owner.query(
      `insert into supply_period (company_id, id, water_supply_id, disinfectant, residual_mg_l, hardness_gpg, entered, source)
       values ($1, $2, $3, $4, $5, 18, '{}', 'bench')`,
      [companyId, newId(), id, disinfectant, residual],
    )
  }
  await owner.query(
    `create temp table fleet on commit drop as select $1::uuid as company, n, uuidv7() as site, uuidv7() as softener, uuidv7() as tank, uuidv7() as bed,
       case n % 6 when 0 then $2::uuid else $3::uuid end as supply, $4::uuid as run, $5::date as day, $5::date - 60 - (n::bigint * 7907 % 6500)::int as began
     from generate_series(1, $6::int) n`,
    [companyId, well, town, run, day, beds],
  )
  await owner.query(ROWS)
  if (forecasts) {
    await owner.query(
      `insert into forecast_run (company_id, id, cause, as_of_day, parameters_version, started_at, finished_at, beds)
       values ($1, $2, 'nightly', $3, 'bench', now(), now(), $4)`,
      [companyId, run, day, beds],
    )
    await owner.query(FORECASTS)
  }
  await owner.query('commit')
  return companyId
}
