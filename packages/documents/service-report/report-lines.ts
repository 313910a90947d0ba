import { drawingOf } from '@almanac/softener/rebed/drawing-of-record'
import { twinName } from '@almanac/softener/tanks/twin-name'
import {
  formatCutLengthIn,
  formatFlowGpm,
  formatHardnessGpg,
  formatPressurePsi,
  formatTankSize,
  formatVolumeFt3,
  formatWeightLb,
} from '@almanac/units/format'
import { formatDay, formatMonths } from '@almanac/units/format-day'
import { showNumber, withUnit } from '@almanac/units/format-number'
import { wordsIn } from '@almanac/words/words-in'
import type { ReportFacts } from './report-facts.ts'

export type Line = { name: string; value: string }

/** Everything that a report says, in words; its pictures aside. */
export function reportLines(facts: ReportFacts) {
  const { display, bed, measured, done, settings, nextDue, figures } = facts
  const words = wordsIn(display.locale, 'report')
  const firm = { figures, display, words: wordsIn(display.locale, 'kit') }
  const drawing = bed && drawingOf(bed, facts, firm)
  const tank = facts.twin && twinName(facts.twin, firm)
  const kind = wordsIn(display.locale, 'jobKind')(facts.kind)
  const line = (name: string, value: string | null | undefined): Line[] => (value ? [{ name, value }] : [])
  const known = (value: number | null, write: (value: number) => string) => (value === null ? words('notMeasured') : write(value))
  const hardness = (value: number | null) => known(value, (gpg) => formatHardnessGpg(gpg, display))
  return {
    words,
    title: words('title', { kind, site: facts.site.label }),
    head: [
      ...line(words('day'), formatDay(facts.day, display)),
      ...line(words('customer'), facts.customerName),
      ...line(words('where'), [facts.site.street, facts.site.town].filter(Boolean).join(', ')),
      ...line(words('softener'), [facts.softenerLabel, tank].filter(Boolean).join(', ')),
      ...line(words('people'), facts.people.join(', ')),
      ...line(words('telephone'), facts.head.telephone),
    ],
    outcome: words(`outcome/${facts.outcome}`),
    done: [
      ...(done.oldBed ? [words('oldOut', { why: wordsIn(display.locale, 'endCause')(done.oldBed.cause ?? 'unknown').toLowerCase() })] : []),
      ...(done.newBed ? newBedLines(done.newBed, facts) : []),
      ...done.steps.map((step) => words(`step/${step}`)),
      ...(done.parts.length > 0
        ? [words('parts', { parts: done.parts.map((part) => `${showNumber(part.quantity, 2, display)} × ${part.name}`).join('; ') })]
        : []),
      ...(done.extra ? [words('extra', { who: done.extra.agreedWith, what: done.extra.what })] : []),
      ...(done.followUp
        ? [words('followUp', { kind: wordsIn(display.locale, 'jobKind')(done.followUp.kind).toLowerCase(), what: done.followUp.what })]
        : []),
    ],
    measured: [
      { name: words('raw'), value: hardness(measured.rawGpg) },
      { name: words('before'), value: hardness(measured.beforeGpg) },
      { name: words('after'), value: hardness(measured.afterGpg) },
      ...(measured.ironMgL === null ? [] : [{ name: words('iron'), value: withUnit(measured.ironMgL, 2, 'mg/L', display) }]),
      ...(measured.pressurePsi === null ? [] : [{ name: words('pressure'), value: formatPressurePsi(measured.pressurePsi, display) }]),
    ],
    drawing: drawing?.ok ? drawing.value : null,
    tank: [
      ...line(words('tank'), bed && formatTankSize(bed.diameterIn, bed.heightIn, display)),
      ...(drawing?.ok
        ? [
            // What is in the tank; where a crew cuts and how far a backwash lifts is theirs.
            ...drawing.value.dimensions
              .filter((one) => one.role === 'bed' || one.role === 'gravel')
              .map((one) => ({ name: one.label, value: one.detail ?? '' })),
          ]
        : []),
    ],
    settings: [
      ...line(words('valve'), settings.valve),
      ...(settings.control === 'unknown' ? [] : line(words('control'), words(`control/${settings.control}`))),
      ...(settings.saltLb === null ? [] : line(words('salt'), formatWeightLb(settings.saltLb, display))),
      ...(settings.backwashGpm === null ? [] : line(words('backwash'), formatFlowGpm(settings.backwashGpm, display))),
    ],
    nextDue: nextDue ? words('dueBetween', { months: formatMonths(nextDue.from, nextDue.until, display) }) : words('dueUnknown'),
  }
}

function newBedLines({ resinKind, volumeFt3, gravelLb, tubeCutIn }: NonNullable<ReportFacts['done']['newBed']>, { display }: ReportFacts) {
  const words = wordsIn(display.locale, 'report')
  const resin = wordsIn(display.locale, 'kit')(resinKind)
  return [
    words('newBed', { volume: formatVolumeFt3(volumeFt3, display), resin }),
    ...(gravelLb > 0 ? [words('newGravel', { weight: formatWeightLb(gravelLb, display) })] : []),
    ...(tubeCutIn === null ? [] : [words('newTube', { length: formatCutLengthIn(tubeCutIn, display) })]),
  ]
}
