import type { SiteHappening } from '@almanac/contract/site-history'
import { beadConditionLines } from '@almanac/records/bead-condition'
import { disinfectantLines } from '@almanac/records/disinfectant'
import { endCauseWords } from '@almanac/records/end-cause'
import { jobKindWords } from '@almanac/records/job-kind'
import { measuringPointLines } from '@almanac/records/measuring-point'
import { resinKindWords } from '@almanac/records/resin-kind'
import { visitOutcomeWords } from '@almanac/records/visit-outcome'
import type { AmountDisplay } from '@almanac/units/display'
import { formatHardnessGpg, formatPressurePsi, formatVolumeFt3 } from '@almanac/units/format'
import { formatMonth } from '@almanac/units/format-day'
import { formatPercent } from '@almanac/units/format-number'
import type { BedTexts } from '@/client/bed-facts-words'

const CAUSES: Record<string, string> = {
  nightly: 'a day older',
  import: 'an import',
  supply: 'a change of the water supply',
  test: 'a water test',
  'close-out': 'a close-out',
  edit: 'a changed fact',
}

type Kind = 'bed' | 'visit' | 'test' | 'water' | 'message' | 'note'
export type EventText = { kind: Kind; title: string; detail: string | null; dayWords?: string; href?: string }

const joined = (parts: (string | null | false)[]): string | null => parts.filter(Boolean).join(', ') || null

/** One happening in words. */
export function describeEvent(happening: SiteHappening, display: AmountDisplay, texts: BedTexts): EventText {
  switch (happening.type) {
    case 'bed-began':
      return {
        kind: 'bed',
        title: `New bed in the ${happening.tank} tank`,
        detail: joined([
          happening.volumeFt3 !== null && formatVolumeFt3(happening.volumeFt3, display),
          happening.resinKind !== 'unknown' && resinKindWords[happening.resinKind],
        ]),
        dayWords: spanOrNone(happening.earliestDay, happening.day, happening.asWritten, texts),
        href: `/beds/${happening.bedId}`,
      }
    case 'bed-ended':
      return {
        kind: 'bed',
        title: `Bed ended in the ${happening.tank} tank`,
        detail: endCauseWords[happening.cause].toLowerCase(),
        dayWords: spanOrNone(happening.earliestDay, happening.day, null, texts),
        href: `/beds/${happening.bedId}`,
      }
    case 'inspection':
      return {
        kind: 'note',
        title: `Bed inspected, ${happening.tank} tank`,
        detail: joined([
          happening.beadCondition && beadConditionLines[happening.beadCondition],
          happening.capacityShare !== null && `capacity ${formatPercent(happening.capacityShare, display)}`,
          happening.moistureShare !== null && `moisture ${formatPercent(happening.moistureShare, display)}`,
          happening.pressureDropPsi !== null && `pressure drop ${formatPressurePsi(happening.pressureDropPsi, display)}`,
          happening.notes,
        ]),
        href: `/beds/${happening.bedId}`,
      }
    case 'water-test':
      return { kind: 'test', title: `Water tested, ${measuringPointLines[happening.point]}`, detail: testWords(happening, display) }
    case 'visit': {
      const outcome = happening.outcome ? visitOutcomeWords[happening.outcome].toLowerCase() : happening.state
      return {
        kind: 'visit',
        title: `${jobKindWords[happening.kind]}: ${outcome}`,
        detail: joined([happening.crew, happening.notes]),
        href: `/jobs/${happening.jobId}`,
      }
    }
    case 'job':
      return {
        kind: 'note',
        title: `${jobKindWords[happening.kind]} ${happening.state.replace('-', ' ')}`,
        detail: happening.reason,
        href: `/jobs/${happening.jobId}`,
      }
    case 'forecast':
      return { kind: 'note', title: forecastWords(happening, display), detail: `after ${CAUSES[happening.cause] ?? happening.cause}` }
    case 'supply':
      return {
        kind: 'water',
        title: `${happening.supply}: ${disinfectantLines[happening.disinfectant]}${happening.residualMgL ? ` ${happening.residualMgL} mg/L` : ''}`,
        detail: happening.source,
      }
    case 'tenure':
      return {
        kind: 'note',
        title: happening.began ? `${happening.customerName} is the new customer` : `${happening.customerName} is no longer the customer`,
        detail: null,
      }
  }
}

function spanOrNone(earliest: string | null, latest: string, asWritten: string | null, texts: BedTexts): string | undefined {
  if (earliest === latest && !asWritten) return undefined
  return texts.span(earliest, latest, asWritten) ?? undefined
}

function testWords(test: Extract<SiteHappening, { type: 'water-test' }>, display: AmountDisplay): string | null {
  return joined([
    test.hardnessGpg !== null && `hardness ${formatHardnessGpg(test.hardnessGpg, display)}`,
    test.freeChlorineMgL !== null && `free chlorine ${test.freeChlorineMgL} mg/L`,
    test.totalChlorineMgL !== null && `total chlorine ${test.totalChlorineMgL} mg/L`,
    test.ironMgL !== null && `iron ${test.ironMgL} mg/L`,
    test.source,
  ])
}

function forecastWords({ fromDue50, toDue50, tank }: Extract<SiteHappening, { type: 'forecast' }>, display: AmountDisplay): string {
  if (!toDue50) return `No due date any more for the ${tank} bed`
  const to = formatMonth(toDue50, display)
  return fromDue50 ? `${tank} bed now due ${to}, was ${formatMonth(fromDue50, display)}` : `${tank} bed forecast: due ${to}`
}
