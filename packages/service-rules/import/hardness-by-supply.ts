import { cleanCell, isSilent } from './clean-cell.ts'
import type { ColumnMapping, HardnessBySupply, KnownHardness } from './import-types.ts'
import { normaliseText } from './normalise.ts'
import { fittingUnit, MOST_BARE_GRAINS, readHardness } from './read-hardness.ts'
import { readPlainNumber } from './read-number.ts'
import { isOwnWell } from './well-names.ts'

/** One row may be a slip. */
const LEAST_ROWS = 2
/** Rows that differ more than this about one supply say nothing of a number without a unit: the units themselves are further apart. */
const FARTHEST = 2
/** A list names no more supplies than this, unless its supply column is no such thing. */
const MOST_SUPPLIES = 500

const columnFor = (mapping: ColumnMapping, field: 'hardness' | 'supplyName') => mapping.columns.find((one) => one.field === field)

/** What the rows of each supply say for sure: those that name a unit, and numbers that can only be mg/L. Nothing where a column's numbers are all in one unit, as somebody chose. */
export function hardnessBySupply(rows: Iterable<readonly string[]>, mapping: ColumnMapping): HardnessBySupply {
  const [hardness, supply] = [columnFor(mapping, 'hardness'), columnFor(mapping, 'supplyName')]
  if (!supply || hardness?.hardnessUnit !== 'each-by-size') return {}
  return knownHardness(rows, hardness.column, supply.column)
}

function knownHardness(rows: Iterable<readonly string[]>, hardnessColumn: number, supplyColumn: number): HardnessBySupply {
  const sure = new Map<string, number[]>()
  for (const cells of rows) {
    const [text, name] = [cleanCell(cells[hardnessColumn]), cleanCell(cells[supplyColumn])]
    if (isSilent(text) || isSilent(name) || isOwnWell(name)) continue
    const bare = readPlainNumber(text)
    if (bare !== null && bare <= MOST_BARE_GRAINS) continue
    const reading = readHardness(text, bare === null ? null : 'mg/L')
    if (!reading.ok || reading.value.hardnessGpg <= 0) continue
    const key = normaliseText(name)
    if (!sure.has(key) && sure.size >= MOST_SUPPLIES) continue
    sure.set(key, [...(sure.get(key) ?? []), reading.value.hardnessGpg])
  }
  return Object.fromEntries(
    [...sure].flatMap(([key, values]) => {
      const known = agreed(values)
      return known ? [[key, known] as const] : []
    }),
  )
}

/** The middle of what rows say, where most of them agree. */
function agreed(values: readonly number[]): KnownHardness | null {
  if (values.length < LEAST_ROWS) return null
  const sorted = [...values].sort((a, b) => a - b)
  const gpg = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0
  const near = sorted.filter((value) => value <= gpg * FARTHEST && value >= gpg / FARTHEST)
  return near.length * 3 >= sorted.length * 2 ? { gpg, rows: sorted.length } : null
}

/** What is known of the supply a row names. */
export function knownOf(known: HardnessBySupply | undefined, supplyName: string | null): KnownHardness | null {
  if (!known || supplyName === null) return null
  const key = normaliseText(supplyName)
  return Object.hasOwn(known, key) ? (known[key] ?? null) : null
}

/** Numbers without a unit up to 60 on one supply, and the unit that fits what its other rows say. */
export type BareGroup = { supply: string; unit: 'gpg' | 'mg/L'; count: number; gpg: number }

/** The numbers without a unit on supplies of which other rows leave no doubt, the most first. */
export function bareGroups(rows: Iterable<readonly string[]>, hardnessColumn: number, supplyColumn: number): BareGroup[] {
  const all = [...rows]
  const known = knownHardness(all, hardnessColumn, supplyColumn)
  const groups = new Map<string, BareGroup>()
  for (const cells of all) {
    const supply = cleanCell(cells[supplyColumn])
    const bare = readPlainNumber(cleanCell(cells[hardnessColumn]))
    const other = knownOf(known, supply)
    if (bare === null || bare > MOST_BARE_GRAINS || !other) continue
    const unit = fittingUnit(bare, other)
    const key = `${unit} ${normaliseText(supply)}`
    groups.set(key, { supply, unit, gpg: other.gpg, count: (groups.get(key)?.count ?? 0) + 1 })
  }
  return [...groups.values()].sort((a, b) => b.count - a.count)
}
