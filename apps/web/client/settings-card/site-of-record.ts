import type { SettingsTank, SoftenerSettings, WaterFact } from '@almanac/contract/softeners'
import type { FirmFigures, ValveCard } from '@almanac/softener/firm/firm-figures'
import { valveForTank } from '@almanac/softener/firm/valve-for-tank'
import { fixtureUnits } from '@almanac/softener/flow/fixture-units'
import { sourceWords } from '@almanac/softener/kit/source-words'
import { valveLabel } from '@almanac/softener/kit/valve-texts'
import type { KitFacts, RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { siteBedOf } from '@almanac/softener/rebed/site-bed-of-record'
import type { CardSpeaking, SiteSources } from '@almanac/softener/setting/card-types'
import { type SiteInput, UNKNOWN_SITE } from '@almanac/softener/site/site-input'
import { yearsSince } from '@almanac/units/calendar/calendar-day'
import { formatDay } from '@almanac/units/format-day'
import { cToF } from '@almanac/units/temperature'
import type { CardChanges } from './card-changes.ts'

export type CardSite = { input: SiteInput; sources: SiteSources; tank: SettingsTank | null; valve: ValveCard | null }

/** How a value's source is said. */
type Said = Pick<CardSpeaking, 'display' | 'card'>

/** What the calculation takes: the record of the softener with what was changed on the page, and where each value is from. */
export function siteOfRecord(
  record: SoftenerSettings,
  changes: CardChanges,
  firm: RebedFirm & Pick<CardSpeaking, 'card'>,
  today: string,
): CardSite {
  const { figures, card } = firm
  const here = card('here')
  const tank =
    record.tanks.find((one) => one.bed && one.diameterIn !== null) ?? record.tanks.find((one) => one.bed) ?? record.tanks[0] ?? null
  const bed = tank?.bed ?? null
  const { water } = record
  const control = changes.control ?? (tank?.valve && tank.valve.control !== 'unknown' ? tank.valve.control : null)
  const valve = valveCard(tank, control, figures)
  const season = temperatures(record, changes, firm)
  const input: SiteInput = {
    ...UNKNOWN_SITE,
    ...siteBedOf(factsOf(tank), firm),
    arrangement: record.arrangement,
    bedAgeYears: bed ? yearsSince(bed.beganEarliest, bed.beganLatest, today) : null,
    hardnessGpg: changes.hardnessGpg ?? water.hardnessGpg?.value ?? null,
    ironMgL: water.ironMgL?.value ?? null,
    manganeseMgL: water.manganeseMgL?.value ?? null,
    dissolvedSolidsMgL: water.dissolvedSolidsMgL?.value ?? null,
    ...season.values,
    people: changes.people ?? record.peopleServed,
    fixtureUnits: changes.fixtures ? fixtureUnits(changes.fixtures) || null : null,
    demandCurve: changes.curve,
    expansionModel: changes.model,
    controlsGpm: valve?.backwashGpm ?? [],
    control,
    refillGpm: valve?.refillGpm ?? null,
    salt: changes.salt,
    wantedLbFt3: changes.doseLbFt3,
  }
  const recorded = (value: unknown) => (value == null ? undefined : card('onRecord'))
  const sources: SiteSources = {
    diameterIn: recorded(input.diameterIn),
    resinFt3: recorded(input.resinFt3),
    gravelLb: recorded(input.gravelLb),
    resinKind: recorded(input.resinKind),
    bedAgeYears: input.bedAgeYears === null ? undefined : card('yearsByRecord', { years: String(Math.round(input.bedAgeYears)) }),
    hardnessGpg: changes.hardnessGpg === null ? waterFactWords(water.hardnessGpg, record, firm) : here,
    ironMgL: waterFactWords(water.ironMgL, record, firm),
    manganeseMgL: waterFactWords(water.manganeseMgL, record, firm),
    dissolvedSolidsMgL: waterFactWords(water.dissolvedSolidsMgL, record, firm),
    ...season.sources,
    fixtureUnits: changes.fixtures ? here : undefined,
    backwashGpm: recorded(input.backwashGpm),
    refillGpm: valve ? `${valveLabel(valve.label, firm.words)} (${sourceWords(valve.source, firm.words)})` : undefined,
  }
  return { input, sources, tank, valve }
}

/** What is on record of a tank, its bed and its valve, in the shape that everything of a bed is made from. */
const factsOf = (tank: SettingsTank | null): KitFacts => ({
  ...{ diameterIn: tank?.diameterIn ?? null, heightIn: tank?.heightIn ?? null, nominalGrains: tank?.nominalGrains ?? null },
  ...{ resinKind: tank?.bed?.resinKind ?? 'unknown', volumeFt3: tank?.bed?.volumeFt3 ?? null, gravelLb: tank?.bed?.gravelLb ?? null },
  ...{ tubeCutIn: tank?.bed?.tubeCutIn ?? null, tubeOdIn: tank?.valve?.tubeOdIn ?? null, valveCardId: tank?.valve?.cardId ?? null },
  backwashGpm: tank?.valve?.backwashGpm ?? null,
})

/** The card that the valve goes by; else the usual one for the tank and how it is run. */
function valveCard(tank: SettingsTank | null, control: 'meter' | 'timer' | null, { valves }: FirmFigures): ValveCard | null {
  return valveForTank(valves, { cardId: tank?.valve?.cardId ?? null, control, diameterIn: tank?.diameterIn ?? null })
}

/** Two different temperatures on record are the coldest and the warmest; one alone is the usual one. */
function temperatures({ water, supplyName }: SoftenerSettings, changes: CardChanges, said: Said) {
  const { coldestC, warmestC } = water
  const both = coldestC !== null && warmestC !== null && coldestC.value < warmestC.value
  const words = (fact: WaterFact | null) => waterFactWords(fact, { supplyName }, said)
  const recorded = (fact: WaterFact | null) => (fact === null ? null : cToF(fact.value))
  return {
    values: {
      coldestF: changes.coldestF ?? (both ? recorded(coldestC) : null),
      warmestF: changes.warmestF ?? (both ? recorded(warmestC) : null),
      usualF: both ? null : recorded(coldestC),
    },
    sources: {
      coldestF: changes.coldestF !== null ? said.card('here') : both ? words(coldestC) : undefined,
      warmestF: changes.warmestF !== null ? said.card('here') : both ? words(warmestC) : undefined,
      usualF: both ? undefined : words(coldestC),
    },
  }
}

/** "test of May 3, 2026", "Kestrel Ridge supply". */
export function waterFactWords(
  fact: WaterFact | null,
  record: Pick<SoftenerSettings, 'supplyName'>,
  { display, card }: Said,
): string | undefined {
  if (!fact) return undefined
  if (fact.from === 'supply') return record.supplyName ?? card('theSupply')
  return fact.day ? card('testOf', { day: formatDay(fact.day, display) }) : card('aTest')
}
