import type { SiteHappening } from '@almanac/contract/site-history'
import type { AmountDisplay } from '@almanac/units/display'
import { formatHardnessGpg, formatPressurePsi, formatVolumeFt3 } from '@almanac/units/format'
import { type DayDisplay, formatMonth } from '@almanac/units/format-day'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import type { BedTexts } from '@/client/bed-facts-words'

/** How a happening is said: the company's units, the reader's language. */
export type EventSpeaking = {
  display: AmountDisplay & DayDisplay
  texts: BedTexts
  /** Writes where a fact came from. */
  source: (kept: string) => string
  words: Words<'history'>
  values: Words<'site'>
  resins: Words<'resinKind'>
  causes: Words<'endCause'>
  points: Words<'visit'>
  water: Words<'water'>
  kinds: Words<'jobKind'>
  states: Words<'jobState'>
  outcomes: Words<'outcome'>
}

type Kind = 'bed' | 'visit' | 'test' | 'water' | 'note'
export type EventText = { kind: Kind; title: string; detail: string | null; dayWords?: string; href?: string }

const CAUSES = ['nightly', 'import', 'supply', 'test', 'close-out', 'edit'] as const

const joined = (parts: (string | null | false)[]): string | null => parts.filter(Boolean).join(', ') || null

/** One happening in words. */
export function describeEvent(happening: SiteHappening, by: EventSpeaking): EventText {
  const { display, words } = by
  switch (happening.type) {
    case 'bed-began':
      return {
        kind: 'bed',
        title: words('bedBegan', { tank: happening.tank }),
        detail: joined([
          happening.volumeFt3 !== null && formatVolumeFt3(happening.volumeFt3, display),
          happening.resinKind !== 'unknown' && by.resins(happening.resinKind),
        ]),
        dayWords: spanOrNone(happening.earliestDay, happening.day, happening.asWritten, by.texts),
        href: `/beds/${happening.bedId}`,
      }
    case 'bed-ended':
      return {
        kind: 'bed',
        title: words('bedEnded', { tank: happening.tank }),
        detail: by.causes(happening.cause).toLowerCase(),
        dayWords: spanOrNone(happening.earliestDay, happening.day, null, by.texts),
        href: `/beds/${happening.bedId}`,
      }
    case 'inspection':
      return {
        kind: 'note',
        title: words('inspected', { tank: happening.tank }),
        detail: joined([
          happening.beadCondition && words(`beads/${happening.beadCondition}`),
          happening.capacityShare !== null && words('capacity', { share: formatPercent(happening.capacityShare, display) }),
          happening.moistureShare !== null && words('moisture', { share: formatPercent(happening.moistureShare, display) }),
          happening.pressureDropPsi !== null && words('drop', { pressure: formatPressurePsi(happening.pressureDropPsi, display) }),
          happening.notes,
        ]),
        href: `/beds/${happening.bedId}`,
      }
    case 'water-test':
      return {
        kind: 'test',
        title: words('tested', { point: by.points(`point/${happening.point}`) }),
        detail: testWords(happening, by),
      }
    case 'visit': {
      const state = happening.outcome ? by.outcomes(happening.outcome).toLowerCase() : by.states(happening.state)
      return {
        kind: 'visit',
        title: words('work', { kind: by.kinds(happening.kind), state }),
        detail: joined([happening.crew, happening.notes]),
        href: `/jobs/${happening.jobId}`,
      }
    }
    case 'job':
      return {
        kind: 'note',
        title: words('work', { kind: by.kinds(happening.kind), state: by.states(happening.state) }),
        detail: happening.reason,
        href: `/jobs/${happening.jobId}`,
      }
    case 'forecast': {
      const cause = CAUSES.find((one) => one === happening.cause)
      return {
        kind: 'note',
        title: forecastWords(happening, by),
        detail: cause ? words('after', { cause: words(`cause/${cause}`) }) : null,
      }
    }
    case 'supply':
      return {
        kind: 'water',
        title: `${happening.supply}: ${by.water(`line/${happening.disinfectant}`)}${happening.residualMgL ? ` ${mgL(happening.residualMgL, display)}` : ''}`,
        detail: by.source(happening.source),
      }
    case 'tenure':
      return { kind: 'note', title: words(happening.began ? 'newCustomer' : 'noLonger', { name: happening.customerName }), detail: null }
  }
}

const mgL = (value: number, display: DayDisplay) => `${showNumber(value, 2, display)} mg/L`

function spanOrNone(earliest: string | null, latest: string, asWritten: string | null, texts: BedTexts): string | undefined {
  if (earliest === latest && !asWritten) return undefined
  return texts.span(earliest, latest, asWritten) ?? undefined
}

function testWords(test: Extract<SiteHappening, { type: 'water-test' }>, { values, display, source }: EventSpeaking): string | null {
  return joined([
    test.hardnessGpg !== null && values('valued/hardness', { value: formatHardnessGpg(test.hardnessGpg, display) }),
    test.freeChlorineMgL !== null && values('valued/free', { value: mgL(test.freeChlorineMgL, display) }),
    test.totalChlorineMgL !== null && values('valued/total', { value: mgL(test.totalChlorineMgL, display) }),
    test.ironMgL !== null && values('valued/iron', { value: mgL(test.ironMgL, display) }),
    source(test.source),
  ])
}

function forecastWords(
  { fromDue50, toDue50, tank }: Extract<SiteHappening, { type: 'forecast' }>,
  { words, display }: EventSpeaking,
): string {
  if (!toDue50) return words('noDue', { tank })
  const month = formatMonth(toDue50, display)
  return fromDue50 ? words('dueMoved', { tank, month, before: formatMonth(fromDue50, display) }) : words('due', { tank, month })
}
