import type { ServiceReportRecord } from '@almanac/database/read/service-report'
import { type ReportFacts, toldSteps } from '@almanac/documents/service-report/report-facts'
import { localeFor } from '@almanac/records/language'
import type { PrintedHead } from '@almanac/records/letterhead'
import type { MeasurementKind } from '@almanac/records/measurement-kind'
import type { ProcedureAskId } from '@almanac/records/procedure-ask'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { AmountKind } from '@almanac/units/amount-kinds'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { readAmount } from '@almanac/units/read-amount'

/** Photographs on paper: more would make a book of it. */
const MOST_PHOTOGRAPHS = 12

/** A picture's bytes as a report prints it; null where the store has lost it. */
export type PictureBytes = (pictureId: string, kind: 'photograph' | 'signature') => Promise<Uint8Array | null>

/** A closed visit's record as its report takes it, in the language of whoever held the site that day. */
export async function reportFacts(
  record: ServiceReportRecord,
  head: PrintedHead,
  figures: FirmFigures,
  bytesOf: PictureBytes,
): Promise<ReportFacts> {
  const { company, holder, closeOut, valve, forecast, signature } = record
  const { checks = [], measurements = [], partsUsed = [], oldBed, newBed, workDay, beside } = closeOut
  /** What a step's question was answered with, as it was typed with its unit. */
  const noted = (ask: ProcedureAskId, kind: AmountKind): number | null => {
    const note = checks.find((one) => one.stepId === ask)?.note
    const reading = note ? readAmount(kind, note, { locale: company.locale }) : null
    return reading?.state === 'read' ? reading.value : null
  }
  const measured = (kind: MeasurementKind) => measurements.filter((one) => one.kind === kind).at(-1)?.value ?? null
  const printed = await Promise.all(
    record.photographs.slice(0, MOST_PHOTOGRAPHS).map(async ({ id, kind }) => ({ kind, bytes: await bytesOf(id, 'photograph') })),
  )
  return {
    head,
    display: { locale: localeFor(holder.language, company.locale), unitSystem: company.unitSystem, currency: company.currency },
    paper: company.paper,
    figures,
    day: workDay ?? record.day,
    customerName: holder.name,
    ...{ site: record.site, softenerLabel: record.softenerLabel, twin: record.twin, kind: record.kind, outcome: record.outcome },
    ...{ people: beside?.others ? [...record.people, beside.others] : record.people, bed: record.bed, temperatureC: record.temperatureC },
    measured: {
      rawGpg: measured('rawHardnessGpg'),
      beforeGpg: noted('hardness-outlet-before-gpg', 'hardness'),
      afterGpg: measured('outletHardnessGpg'),
      ironMgL: measured('rawIronMgL'),
      pressurePsi: measured('pressurePsi'),
    },
    done: {
      steps: toldSteps.filter((step) => checks.some((one) => one.stepId === step && one.confirmed)),
      oldBed: oldBed?.takenOut ? { cause: oldBed.endCause } : null,
      newBed: newBed ?? null,
      parts: partsUsed.map(({ name, quantity }) => ({ name, quantity })),
      ...{ extra: beside?.extra ?? null, followUp: beside?.followUp ?? null },
    },
    settings: {
      valve: figures.valves.find((card) => card.id === valve?.cardId)?.label ?? valve?.label ?? null,
      control: valve?.control ?? 'unknown',
      saltLb: noted('salt-dose-lb', 'saltDose'),
      backwashGpm: measured('backwashGpm') ?? valve?.backwashGpm ?? null,
    },
    nextDue: forecast?.due10Day && forecast.due90Day ? { from: forecast.due10Day, until: forecast.due90Day } : null,
    photographs: printed.flatMap(({ kind, bytes }) => (bytes ? [{ kind, bytes }] : [])),
    morePhotographs: Math.max(0, record.photographs.length - MOST_PHOTOGRAPHS),
    signature: signature && {
      ...{ answer: signature.answer, name: signature.name, day: dayIn(company.timeZone, signature.at) },
      bytes: signature.pictureId ? await bytesOf(signature.pictureId, 'signature') : null,
    },
  }
}
