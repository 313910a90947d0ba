import { type EndCause, endCauseWords } from '@almanac/records/end-cause'
import type { NoteFact } from './find-in-notes.ts'
import type { BedBeganFrom, DayReading, EarlierBed } from './import-types.ts'

/** What firms write of why a bed was taken out, the most telling first: "failed, beads" is a bed whose beads were lost. */
const CAUSES: readonly [EndCause, RegExp][] = [
  ['tank-cracked', /\btank (?:was |had )?(?:cracked|split|leak\w*|burst|froze\w*)|\b(?:cracked|burst|frozen) tank\b/i],
  ['oxidised', /\b(?:oxidi[sz]ed|mushy|swollen|soft beads|chlorine (?:damage|attack))\b/i],
  [
    'beads-lost',
    /\bbeads?\b|\bresin (?:in|through|lost)\b|\b(?:broken|cracked) (?:distributor|riser|tube|basket|lateral)s?\b|\bdistributor\b/i,
  ],
  ['iron-fouled', /\biron\b|\bfouled\b/i],
  ['removed-for-convenience', /\b(?:precaution\w*|preventive|early|upgrade\w*|convenience)\b/i],
  ['worn', /\b(?:worn|failed|failure|exhausted|spent|dead|old age|hard water|no capacity)\b/i],
]

const FARTHEST = 80
/** A tank that was rebedded oftener is a slip of the notes. */
const MOST_BEFORE = 12
/** In brackets behind the rebed, or behind a word that gives a reason; up to the end of the clause. */
const REASON = /^\s*(?:\(([^)]*)\)|[,:–—-]?\s*(?:because(?: of)?|as|after|since)\s+([^.;|()]*))/i

/** Why the bed before a rebed came out, where the notes, with single blanks, say so right behind it. */
function causeBehind(flat: string, quote: string): EndCause | null {
  const at = flat.indexOf(quote)
  const found = at < 0 ? null : REASON.exec(flat.slice(at + quote.length, at + quote.length + FARTHEST))
  const reason = found?.[1] ?? found?.[2] ?? ''
  return CAUSES.find(([, pattern]) => pattern.test(reason))?.[0] ?? null
}

type Rebed = { day: DayReading; cause: EndCause | null }

/**
 * The fillings before the present one, the oldest first: each rebed ended one, for the reason written behind it. What lay in the tank before the first rebed counts where the
 * softener's installation is known, or where the notes tell more than that one rebed.
 */
export function earlierBeds(
  present: { day: DayReading | null; from: BedBeganFrom | null },
  installed: DayReading | null,
  rebeds: readonly NoteFact[],
  notes: string,
): { beds: EarlierBed[]; said: string[] } {
  const { day, from } = present
  if (!day || (from !== 'notes-rebed' && from !== 'resin-column')) return { beds: [], said: [] }
  const own = rebeds.find((one) => one.day.earliestDay <= day.latestDay && one.day.latestDay >= day.earliestDay)
  // Notes may be made to hold up whoever weighs them: what says the same day twice is weighed once.
  const before = rebeds
    .filter((one) => one.day.latestDay < day.earliestDay && (!installed || one.day.latestDay >= installed.earliestDay))
    .sort((a, b) => (a.day.latestDay < b.day.latestDay ? -1 : 1))
    .filter((one, at, all) => at === 0 || (all[at - 1]?.day.latestDay ?? '') < one.day.earliestDay)
    .slice(-MOST_BEFORE)
  const flat = own || before.length > 0 ? notes.replace(/\s+/g, ' ') : ''
  const chain: Rebed[] = [
    ...before.map((one) => ({ day: one.day, cause: causeBehind(flat, one.quote) })),
    { day, cause: own ? causeBehind(flat, own.quote) : null },
  ]
  const first = chain[0]
  const start = installed && first && installed.latestDay < first.day.earliestDay ? installed : null
  const isFirstTold = start !== null || chain.length > 1 || (first?.cause ?? null) !== null
  const beds = chain.map((one, at) => ({
    began: at === 0 ? start : (chain[at - 1]?.day ?? null),
    ended: one.day,
    cause: one.cause ?? ('unknown' as const),
  }))
  const said = [
    ...before.map((one) => `An earlier rebed was taken from the notes: "${one.quote}".`),
    ...chain.flatMap(({ cause, day: { asWritten } }) =>
      cause ? [`Why the bed before "${asWritten}" ended was taken from the notes: ${endCauseWords[cause].toLowerCase()}.`] : [],
    ),
  ]
  return { beds: isFirstTold ? beds : [], said }
}
