import { intervalTerms } from '../lifetime/interval-terms.ts'
import type { LifeFamily } from '../lifetime/life-family.ts'
import type { LifeRecord } from '../lifetime/life-record.ts'

/** Records laid out for the inner loop: one row a record, the design with a leading 1. */
export interface LifeTable {
  readonly count: number
  readonly columns: number
  readonly design: Float64Array
  readonly logLower: Float64Array
  /** Infinity for right censoring, equal to logLower for an exact failure. */
  readonly logUpper: Float64Array
  /** −Infinity when followed from the start. */
  readonly logEntry: Float64Array
  readonly weight: Float64Array
}

export function lifeTable(records: readonly LifeRecord[], covariates: number): LifeTable {
  const count = records.length
  const columns = covariates + 1
  const table = {
    count,
    columns,
    design: new Float64Array(count * columns),
    logLower: new Float64Array(count),
    logUpper: new Float64Array(count),
    logEntry: new Float64Array(count),
    weight: new Float64Array(count),
  }
  records.forEach((record, i) => {
    table.design[i * columns] = 1
    for (let j = 0; j < covariates; j++) table.design[i * columns + j + 1] = record.covariates?.[j] ?? Number.NaN
    table.logLower[i] = Math.log(record.lower)
    table.logUpper[i] = record.upper === record.lower ? (table.logLower[i] as number) : Math.log(record.upper)
    table.logEntry[i] = Math.log(record.entry ?? 0)
    table.weight[i] = record.weight ?? 1
  })
  return table
}

/** Log-likelihood, gradient and Hessian (row-major) by (coefficients…, ln scale). */
export interface Curvature {
  value: number
  readonly gradient: Float64Array
  readonly hessian: Float64Array
}

/** One record's derivatives by location and ln scale, gathered before they meet the design row. */
interface Local {
  value: number
  location: number
  logScale: number
  locationTwice: number
  mixed: number
  logScaleTwice: number
}

const term = new Float64Array(3)

/** Adds sign × g(z), g in `term`, by the chain rule: dz/dlocation = −1/scale, dz/dlnscale = −z. */
function addTerm(local: Local, z: number, scale: number, sign: number): void {
  const g1 = sign * (term[1] as number)
  const g2 = sign * (term[2] as number)
  local.value += sign * (term[0] as number)
  local.location -= g1 / scale
  local.logScale -= g1 * z
  local.locationTwice += g2 / (scale * scale)
  local.mixed += (g2 * z + g1) / scale
  local.logScaleTwice += g2 * z * z + g1 * z
}

const pair = new Float64Array(6)

/** Adds ln(S(a) − S(b)), a < b, both finite. */
function addInterval(local: Local, family: LifeFamily, a: number, b: number, scale: number): void {
  intervalTerms(family, a, b, pair)
  const [log, ga, gb, gaa, gab, gbb] = pair as unknown as [number, number, number, number, number, number]
  local.value += log
  local.location -= (ga + gb) / scale
  local.logScale -= ga * a + gb * b
  local.locationTwice += (gaa + 2 * gab + gbb) / (scale * scale)
  local.mixed += (gaa * a + gab * (a + b) + gbb * b + ga + gb) / scale
  local.logScaleTwice += gaa * a * a + 2 * gab * a * b + gbb * b * b + ga * a + gb * b
}

/** Derivatives of one record at its location. */
function recordTerms(
  table: LifeTable,
  family: LifeFamily,
  i: number,
  location: number,
  scale: number,
  logScale: number,
  local: Local,
): void {
  local.value = local.location = local.logScale = local.locationTwice = local.mixed = local.logScaleTwice = 0
  const logLower = table.logLower[i] as number
  const logUpper = table.logUpper[i] as number
  const logEntry = table.logEntry[i] as number
  const a = (logLower - location) / scale
  if (logUpper === logLower) {
    family.logDensity(a, term)
    addTerm(local, a, scale, 1)
    // The density of t is that of z over scale·t.
    local.value -= logScale + logLower
    local.logScale -= 1
  } else if (logUpper === Number.POSITIVE_INFINITY) {
    if (logLower !== Number.NEGATIVE_INFINITY) {
      family.logSurvival(a, term)
      addTerm(local, a, scale, 1)
    }
  } else {
    const b = (logUpper - location) / scale
    if (logLower === Number.NEGATIVE_INFINITY) {
      family.logFailure(b, term)
      addTerm(local, b, scale, 1)
    } else addInterval(local, family, a, b, scale)
  }
  if (logEntry !== Number.NEGATIVE_INFINITY) {
    const z = (logEntry - location) / scale
    family.logSurvival(z, term)
    addTerm(local, z, scale, -1)
  }
}

/** The whole table's log-likelihood and derivatives at theta = (coefficients…, ln scale); `offset` shifts the location of each record if given. */
export function lifeLikelihood(table: LifeTable, family: LifeFamily, theta: ArrayLike<number>, offset?: Float64Array): Curvature {
  const { columns, design } = table
  const size = columns + 1
  const gradient = new Float64Array(size)
  const hessian = new Float64Array(size * size)
  const logScale = theta[columns] as number
  const scale = Math.exp(logScale)
  const local: Local = { value: 0, location: 0, logScale: 0, locationTwice: 0, mixed: 0, logScaleTwice: 0 }
  let value = 0
  for (let i = 0; i < table.count; i++) {
    const row = i * columns
    let location = offset === undefined ? 0 : (offset[i] as number)
    for (let j = 0; j < columns; j++) location += (design[row + j] as number) * (theta[j] as number)
    recordTerms(table, family, i, location, scale, logScale, local)
    const w = table.weight[i] as number
    value += w * local.value
    for (let j = 0; j < columns; j++) {
      const x = w * (design[row + j] as number)
      gradient[j] = (gradient[j] as number) + x * local.location
      const curve = x * local.locationTwice
      for (let k = 0; k <= j; k++) hessian[j * size + k] = (hessian[j * size + k] as number) + curve * (design[row + k] as number)
      hessian[columns * size + j] = (hessian[columns * size + j] as number) + x * local.mixed
    }
    gradient[columns] = (gradient[columns] as number) + w * local.logScale
    hessian[size * size - 1] = (hessian[size * size - 1] as number) + w * local.logScaleTwice
  }
  for (let j = 0; j < size; j++) for (let k = 0; k < j; k++) hessian[k * size + j] = hessian[j * size + k] as number
  return { value, gradient, hessian }
}
