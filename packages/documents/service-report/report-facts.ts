import type { TwinTank } from '@almanac/records/arrangement'
import type { BedFacts } from '@almanac/records/bed-facts'
import type { EndCause } from '@almanac/records/end-cause'
import type { JobKind } from '@almanac/records/job-kind'
import type { PrintedHead } from '@almanac/records/letterhead'
import type { Paper } from '@almanac/records/paper'
import type { PhotographKind } from '@almanac/records/picture-kind'
import type { ResinKindId } from '@almanac/records/resin-kind'
import type { Signing } from '@almanac/records/signing'
import type { RecordedValveControl } from '@almanac/records/valve-control'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { Display } from '@almanac/units/display'

/** Work of a visit that its report tells of in a line of its own, where the crew confirmed it. */
export const toldSteps = ['seals-renewed', 'sanitised', 'regeneration-started', 'leaks-checked'] as const
export type ToldStep = (typeof toldSteps)[number]

/** What a service report is made from, in canonical units; null where it is not known or was not measured. */
export type ReportFacts = {
  head: PrintedHead
  /** In the customer's language; region and units are the company's. */
  display: Omit<Display, 'timeZone'>
  paper: Paper
  figures: FirmFigures
  /** The day of the work, 'YYYY-MM-DD'. */
  day: string
  customerName: string | null
  site: { label: string; street: string | null; town: string | null }
  softenerLabel: string | null
  twin: TwinTank | null
  kind: JobKind
  outcome: VisitOutcome
  people: readonly string[]
  /** The bed in the tank since the visit; null where there is none, or the visit was for no bed. */
  bed: BedFacts | null
  temperatureC: number | null
  measured: { rawGpg: number | null; beforeGpg: number | null; afterGpg: number | null; ironMgL: number | null; pressurePsi: number | null }
  done: {
    steps: readonly ToldStep[]
    /** Why the old bed ended; null where it stayed. */
    oldBed: { cause: EndCause | null } | null
    newBed: { resinKind: ResinKindId; volumeFt3: number; gravelLb: number; tubeCutIn: number | null } | null
    parts: readonly { name: string; quantity: number }[]
    /** Work beyond the job, and with whom of the household it was agreed. */
    extra: { what: string; agreedWith: string } | null
    /** Another visit that was asked for. */
    followUp: { kind: JobKind; what: string } | null
  }
  settings: { valve: string | null; control: RecordedValveControl; saltLb: number | null; backwashGpm: number | null }
  /** Between which days the next rebed will likely be due. */
  nextDue: { from: string; until: string } | null
  photographs: readonly { kind: PhotographKind; bytes: Uint8Array }[]
  /** Of those that there are, how many are not printed. */
  morePhotographs: number
  signature: { answer: Signing; name: string | null; day: string; bytes: Uint8Array | null } | null
}
