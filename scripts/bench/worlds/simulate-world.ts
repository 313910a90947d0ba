/**
 * Firms and how their records arise, drawn independently of the forecast: own random numbers, own lives, own days; nothing is imported from the model. Figures of lives, of
 * households and of visits are spread about what the trade says (docs/decisions/forecast-priors.md), so that an honest forecast holds its shares over many firms.
 */
export const WORLDS = ['visits', 'calls', 'mixed', 'late-list', 'unknown-cause', 'no-supply', 'lognormal', 'tiny', 'no-failures'] as const
export type World = (typeof WORLDS)[number]

/** Days since 1970. */
export const AS_OF = Date.UTC(2024, 0, 1) / 86_400_000
const YEAR = 365.2425

export interface WorldBed {
  /** Days between which the record says that it went in; null: nobody knows. */
  readonly begun: { readonly from: number; readonly to: number } | null
  /** The day the firm came to it with the bed already in service; null where the firm put it in. */
  readonly met: number | null
  /** The day of the paper list it came from, nobody having seen it. */
  readonly listed: number | null
  /** Days on which somebody saw it working. */
  readonly looks: readonly number[]
  readonly out: { readonly day: number; readonly cause: 'failed' | 'removed' | 'unknown' } | null
  readonly chlorineMgL: number
  readonly supply: string | null
  /** In truth: when it fails if left, and when it would be taken out for another reason. */
  readonly failsOn: number
  readonly removedOn: number
}

interface Firm {
  readonly median: number
  readonly shape: number
  readonly exponent: number
  readonly callShare: number
  readonly callDelayDays: number
  readonly removalsPerYear: number
  readonly supplies: readonly { readonly name: string; readonly chlorineMgL: number; readonly effect: number }[]
}

/** Uniform numbers from a seed: mulberry32. */
export function numbers(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** Box and Muller. */
const normal = (random: () => number) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
const exponential = (random: () => number, mean: number) => -mean * Math.log(1 - random())

function drawFirm(world: World, random: () => number): Firm {
  const spread = world === 'no-supply' ? 0.15 : 0.08
  return {
    median: 13.5 * Math.exp(0.15 * normal(random)),
    shape: 3 * Math.exp(0.2 * normal(random)),
    exponent: random() < 0.2 ? 0 : 0.7 * Math.exp(0.3 * normal(random)),
    callShare: 1 / (1 + Math.exp(-(Math.log(4) + 0.8 * normal(random)))),
    callDelayDays: 30 + 60 * random(),
    removalsPerYear: world === 'unknown-cause' ? 0.02 : 0.005,
    supplies: [0.2, 0.8, 1.5, 2.5].map((chlorineMgL, i) => ({ name: `supply-${i}`, chlorineMgL, effect: spread * normal(random) })),
  }
}

/** Clean years until failure. */
function drawLife(world: World, { median, shape }: Firm, random: () => number): number {
  // The same spread of ln life, π/(√6·shape), in both.
  if (world === 'lognormal') return median * Math.exp((Math.PI / Math.sqrt(6) / shape) * normal(random))
  return median * (-Math.log(1 - random()) / Math.LN2) ** (1 / shape)
}

/** Share of households with a visit about once a year; the others see nobody unless they call. */
const VISITED: Readonly<Partial<Record<World, number>>> = { visits: 1, calls: 0, 'late-list': 0.3 }

/** All beds of one firm of `places` softeners, in service or out, as they are on record on AS_OF, with what is true of them. */
export function simulateWorld(world: World, places: number, random: () => number): WorldBed[] {
  const firm = drawFirm(world, random)
  const listDay = Math.round(AS_OF - (5 + 5 * random()) * YEAR)
  const beds: WorldBed[] = []
  for (let i = 0; i < places; i++) simulatePlace(world, firm, listDay, random, beds)
  return beds
}

function simulatePlace(world: World, firm: Firm, listDay: number, random: () => number, beds: WorldBed[]): void {
  const supply = firm.supplies[Math.floor(random() * firm.supplies.length)] as Firm['supplies'][number]
  const rate = (1 + supply.chlorineMgL) ** firm.exponent * Math.exp(-supply.effect)
  const calls = random() < firm.callShare
  const visited = random() < (VISITED[world] ?? 0.5)
  const years = world === 'no-failures' ? 5 : 30
  let begin = Math.round(AS_OF - 30 - years * YEAR * random())
  const taken = world !== 'calls' && world !== 'late-list' && world !== 'no-failures' && random() < 0.4
  // From this day on the firm knows the place.
  const start = world === 'late-list' ? Math.max(begin, listDay) : taken ? Math.round(begin + 10 * YEAR * random()) : begin
  if (start > AS_OF) return
  const visits: number[] = []
  if (visited) for (let day = start + 365; day <= AS_OF; day += 300 + Math.floor(130 * random())) visits.push(day)
  for (let guard = 0; guard < 60 && begin < AS_OF; guard++) {
    const failsOn = Math.ceil(begin + (drawLife(world, firm, random) / rate) * YEAR)
    const removedOn = Math.ceil(begin + exponential(random, YEAR / firm.removalsPerYear))
    const called = calls ? Math.ceil(failsOn + exponential(random, firm.callDelayDays)) : Number.POSITIVE_INFINITY
    const visitedAt = visits.find((day) => day > failsOn) ?? Number.POSITIVE_INFINITY
    // Before the firm came somebody else put the next one in, within about a year.
    const before = Math.ceil(failsOn + 300 * random())
    const own = begin >= start
    const first = own ? begin : start
    if (!own && Math.min(failsOn, removedOn) <= start && (world !== 'late-list' || Math.min(before, called, removedOn) <= start)) {
      // Gone before the firm came, or met failed and replaced at once.
      begin = Math.min(failsOn, removedOn) <= start - 300 ? Math.min(before, removedOn) : start
      continue
    }
    const isRemoved = removedOn < failsOn
    const end = isRemoved ? removedOn : Math.min(called, visitedAt, removedOn)
    const open = end > AS_OF
    const known = world === 'unknown-cause' && random() < 0.5 ? 'unknown' : isRemoved ? 'removed' : 'failed'
    const seenFirst = own || world !== 'late-list' ? [first] : []
    beds.push({
      begun: own ? { from: begin, to: begin } : recordedBegin(begin, random),
      met: own || world === 'late-list' ? null : start,
      listed: !own && world === 'late-list' ? listDay : null,
      looks: [...seenFirst, ...visits.filter((day) => day > first && day < Math.min(failsOn, end, AS_OF + 1))],
      out: open ? null : { day: end, cause: known },
      chlorineMgL: supply.chlorineMgL,
      supply: world === 'no-supply' ? null : supply.name,
      failsOn,
      removedOn,
    })
    begin = end
  }
}

/** Of a bed the firm did not put in: the year, or nothing. */
function recordedBegin(begin: number, random: () => number): WorldBed['begun'] {
  if (random() < 0.3) return null
  const year = new Date(begin * 86_400_000).getUTCFullYear()
  return { from: Date.UTC(year, 0, 1) / 86_400_000, to: Date.UTC(year, 11, 31) / 86_400_000 }
}
