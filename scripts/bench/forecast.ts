import fs from 'node:fs'
import zlib from 'node:zlib'
import { fitTable, type LifeFit } from '@almanac/forecast/fit/fit-lifetime'
import { type LifeTable, lifeTable } from '@almanac/forecast/fit/life-likelihood'
import { type BedCounter, countBeds, countQuantile, mixture } from '@almanac/forecast/fleet/poisson-binomial'
import type { LifeRecord } from '@almanac/forecast/lifetime/life-record'
import { cholesky } from '@almanac/forecast/numeric/cholesky'
import { normalPoints } from '@almanac/forecast/numeric/normal-points'

type Bench = { args: string[]; say: (line: string) => void }

const usage = 'npm run bench -- forecast FILE [--draws 2], FILE a .csv or .csv.gz with the columns entry, exit, event and x1 to x8'
const COVARIATES = 8
const MONTHS = 60

/** What the data were made with, and what R found that ignored late entry; the benchmark's own notes. */
const TRUE_SCALE = 0.4

/**
 * A fleet of one hundred thousand records from file: Weibull fit with late entry, then each item's chance of failing in each of the next 60 months given its age, mixed
 * over draws of the parameters, and the exact distribution of the count of each month. Times are this process's own computing time, which a loaded machine does not
 * lengthen; wall times stand beside them.
 */
export default async function measureForecast({ args, say }: Bench) {
  const file = args.find((arg, i) => !arg.startsWith('--') && !args[i - 1]?.startsWith('--'))
  if (file === undefined || !fs.existsSync(file)) throw new Error(`Name the file of records. Usage: ${usage}`)
  const at = args.indexOf('--draws')
  const draws = at < 0 ? 2 : Number(args[at + 1])
  if (!Number.isInteger(draws) || draws < 1 || draws > 64) throw new Error(`--draws must be a whole number from 1 to 64. Usage: ${usage}`)
  const { table, blind, events } = readTable(file)
  say(`${table.count} records, ${events} failures.`)
  const fit = timed(() => settled(fitTable(table, 'weibull', events)))
  const withoutEntry = settled(fitTable(blind, 'weibull', events))
  const forecast = timed(() => forecastMonths(table, fit.value, draws))
  const memoryMb = process.memoryUsage().rss / 2 ** 20
  const line = (name: string, { cpu, wall }: { cpu: number; wall: number }) =>
    say(`${name.padEnd(44)} ${cpu.toFixed(2)} s computing, ${wall.toFixed(2)} s by the wall`)
  line(`fit with late entry, ${fit.value.iterations} steps`, fit)
  line(`${table.count} × ${MONTHS} months, ${draws} draws, counts`, forecast)
  say(`resident memory ${memoryMb.toFixed(0)} MB`)
  say(`scale ${fit.value.scale.toFixed(4)}, ignoring late entry ${withoutEntry.scale.toFixed(4)}, truth ${TRUE_SCALE.toFixed(3)}`)
  const first = forecast.value[0]
  say(`failures of the first month: ${first?.mean.toFixed(1)} expected, ${first?.low} to ${first?.high}`)
  return {
    records: table.count,
    fitSeconds: fit.cpu,
    forecastSeconds: forecast.cpu,
    memoryMb,
    draws,
    logLikelihood: fit.value.logLikelihood,
    scale: fit.value.scale,
    scaleIgnoringLateEntry: withoutEntry.scale,
  }
}

function timed<T>(work: () => T): { value: T; cpu: number; wall: number } {
  const [cpu, wall] = [process.cpuUsage(), performance.now()]
  const value = work()
  const used = process.cpuUsage(cpu)
  return { value, cpu: (used.user + used.system) / 1e6, wall: (performance.now() - wall) / 1e3 }
}

function settled<T>(result: { ok: true; value: T } | { ok: false; reason: string }): T {
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

/** The records with late entry, and the same without. */
function readTable(file: string): { table: LifeTable; blind: LifeTable; events: number } {
  const raw = fs.readFileSync(file)
  const text = (file.endsWith('.gz') ? zlib.gunzipSync(raw) : raw).toString('latin1')
  const records: LifeRecord[] = []
  let events = 0
  let from = text.indexOf('\n') + 1
  while (from < text.length) {
    const end = text.indexOf('\n', from)
    const cells = text.slice(from, end < 0 ? text.length : end).split(',')
    from = end < 0 ? text.length : end + 1
    if (cells.length < 4 + COVARIATES) continue
    const [entry, exit, event] = [Number(cells[1]), Number(cells[2]), cells[3] === '1']
    if (event) events++
    records.push({
      entry,
      lower: exit,
      upper: event ? exit : Number.POSITIVE_INFINITY,
      covariates: Float64Array.from({ length: COVARIATES }, (_, j) => Number(cells[4 + j])),
    })
  }
  const table = lifeTable(records, COVARIATES)
  return { table, blind: { ...table, logEntry: new Float64Array(table.count).fill(Number.NEGATIVE_INFINITY) }, events }
}

/** Sets of parameters for the doubt about them: fixed points of the fit's normal distribution; one draw is the estimate itself. */
function drawsOf(fit: LifeFit, count: number): Float64Array[] {
  const centre = Float64Array.from([...fit.coefficients, Math.log(fit.scale)])
  const size = centre.length
  const lower = cholesky(fit.covariance, size)
  if (count === 1 || lower === null) return [centre]
  return normalPoints(2 * Math.ceil(count / 2), size)
    .slice(0, count)
    .map((z) =>
      centre.map((value, i) => {
        let sum = value
        for (let k = 0; k <= i; k++) sum += (lower[i * size + k] as number) * (z[k] as number)
        return sum
      }),
    )
}

function forecastMonths(table: LifeTable, fit: LifeFit, count: number): { mean: number; low: number; high: number }[] {
  const parts = drawsOf(fit, count).map((theta) => countersOf(table, theta))
  return Array.from({ length: MONTHS }, (_, m) => {
    const counts = mixture(parts.map((counters) => (counters[m] as BedCounter).distribution()))
    const mean = counts.chance.reduce((sum, chance, i) => sum + chance * (counts.first + i), 0)
    return { mean, low: countQuantile(counts, 0.1), high: countQuantile(counts, 0.9) }
  })
}

/** Each item's chance of failing in each month, given that it has reached its age, into that month's counter. Weibull. */
function countersOf(table: LifeTable, theta: Float64Array): BedCounter[] {
  const counters = Array.from({ length: MONTHS }, () => countBeds())
  const shape = Math.exp(-(theta[table.columns] as number))
  for (let i = 0; i < table.count; i++) {
    let location = 0
    for (let j = 0; j < table.columns; j++) location += (table.design[i * table.columns + j] as number) * (theta[j] as number)
    const age = Math.exp(table.logLower[i] as number)
    const scale = Math.exp(-shape * location)
    const reached = scale * age ** shape
    let before = 1
    for (let m = 0; m < MONTHS; m++) {
      const after = Math.exp(reached - scale * Math.exp(shape * Math.log(age + (m + 1) / 12)))
      ;(counters[m] as BedCounter).add(before - after)
      before = after
    }
  }
  return counters
}
