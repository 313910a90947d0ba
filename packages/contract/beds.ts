import { beadConditions } from '@almanac/records/bead-condition'
import { factSources } from '@almanac/records/fact-source'
import { questionKeys } from '@almanac/records/forecast-question'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { BedRecord } from './bed-record.ts'
import { DriverLine, ShownFit } from './forecasts.ts'
import { command, Day, Entered, Id, Instant, page, pageOf, Version, Why } from './shared.ts'
import { ResinVolume } from './site-commands.ts'
import { BedLine, JobLine, line, TankLine, WhomToCall } from './site-facts.ts'

const Question = z.enum(questionKeys)

/** The stored forecast of a bed; days null where none could be made, then `refusal` says why. */
export const StoredForecast = z.object({
  asOfDay: Day,
  computedAt: Instant,
  due10Day: Day.nullable(),
  due50Day: Day.nullable(),
  due90Day: Day.nullable(),
  chance3Months: z.number().nullable(),
  chance12Months: z.number().nullable(),
  chance24Months: z.number().nullable(),
  /** Chance that it has failed unnoticed since it was last seen. */
  chanceAlreadyFailed: z.number().nullable(),
  drivers: z.array(DriverLine),
  assumptions: z.array(z.string()),
  missing: z.array(z.string()),
  /** The one question that would sharpen it most. */
  question: Question.nullable(),
  refusal: z.string().nullable(),
})
export type StoredForecast = z.infer<typeof StoredForecast>

/** A list handed on as it was computed. */
const list = <T extends z.ZodType>(of: T) => z.array(of).readonly()

/** A forecast with all that stands behind it, computed afresh from the record; or the sentence saying why there is none. */
export const BedExplanation = z.discriminatedUnion('ok', [
  z.object({
    ok: z.literal(true),
    value: z.object({
      beginning: z.object({ earliestDay: Day, latestDay: Day }),
      lastSeenDay: Day,
      medianLifeYears: z.number(),
      medianCleanLifeYears: z.number(),
      curve: list(z.object({ day: Day, low: z.number(), mid: z.number(), high: z.number() })),
      /** The fit it came from; null: industry rules of thumb. */
      fit: ShownFit.nullable(),
      exposure: list(z.object({ fromDay: Day, toDay: Day.nullable(), why: z.string() })),
      weakness: z.object({ byCause: list(z.object({ key: Question, years: z.number() })) }),
      /** The measurement or answer that would sharpen it most; null where none would noticeably. */
      sharpest: z.object({ key: Question, years: z.number() }).nullable(),
      explanation: z.object({
        formula: z.string(),
        inputs: list(z.object({ name: z.string(), value: z.string() })),
        parametersVersion: z.string(),
        sources: list(z.string()),
      }),
    }),
    assumptions: list(z.string()),
  }),
  z.object({ ok: z.literal(false), reason: z.string() }),
])
export type BedExplanation = z.infer<typeof BedExplanation>

const InspectionLine = z.object({
  id: Id,
  day: Day,
  beadCondition: z.enum(beadConditions).nullable(),
  capacityShare: z.number().nullable(),
  moistureShare: z.number().nullable(),
  pressureDropPsi: z.number().nullable(),
  notes: z.string().nullable(),
  source: z.string(),
})

/** A bed in its tank: facts in canonical units (inches, ft³, lb, gpm), each with where it came from, and what is expected of it. */
export const BedPage = BedLine.omit({ due10Day: true, due50Day: true, due90Day: true, chance12Months: true }).extend({
  version: Version,
  gravelLb: z.number().nullable(),
  tubeCutIn: z.number().nullable(),
  entered: z.record(z.string(), Entered),
  sources: z.record(z.string(), z.string()),
  tank: TankLine,
  valve: z
    .object({
      id: Id,
      version: Version,
      backwashGpm: z.number().nullable(),
      tubeOdIn: z.number().nullable(),
      cardId: z.string().nullable(),
    })
    .nullable(),
  /** Null while the tank stands in the workshop. */
  softener: z.object({ id: Id, label: z.string(), tankCount: z.number() }).nullable(),
  site: z.object({ id: Id, label: z.string(), town: z.string().nullable(), whom: WhomToCall }).nullable(),
  /** What its kit, drawing and steps are made from. */
  facts: BedRecord,
  waterTemperatureC: z.number().nullable(),
  inspections: z.array(InspectionLine),
  /** Other beds of the same tank, newest first. */
  otherBeds: z.array(BedLine),
  openJobs: z.array(JobLine),
  /** A customer says that its water is hard since between these days; null where nobody does, or where it was seen working after. */
  heardHard: z.object({ earliest: Day, latest: Day, calledAt: Instant }).nullable(),
  forecast: StoredForecast.nullable(),
})
export type BedPage = z.infer<typeof BedPage>

const quantity = <const U extends readonly [string, ...string[]]>(units: U) => z.object({ value: Entered.shape.value, unit: z.enum(units) })

/** Facts to change: a key left out stays, null or '' clears. Texts are read as people write them. */
export const BedFactChanges = z.object({
  tankSize: line(60).optional(),
  resinKind: z.enum(recordedResinKinds).optional(),
  volume: ResinVolume.nullable().optional(),
  gravel: quantity(['lb', 'kg']).nullable().optional(),
  tubeCut: quantity(['in', 'cm', 'mm']).nullable().optional(),
  began: line(60).optional(),
  lastSeenDay: Day.nullable().optional(),
  backwash: quantity(['gpm', 'L/min']).nullable().optional(),
})
export type BedFactChanges = z.infer<typeof BedFactChanges>

export const ChangeBedFacts = command({
  bedId: Id,
  version: Version,
  tankVersion: Version,
  /** Null where the tank has no valve recorded. */
  valveVersion: Version.nullable(),
  source: z.enum(factSources),
  facts: BedFactChanges,
  why: Why,
})
export type ChangeBedFacts = z.infer<typeof ChangeBedFacts>

export const InspectBed = command({
  bedId: Id,
  day: Day,
  beadCondition: z.enum(beadConditions).nullable(),
  capacityShare: z.number().nullable(),
  moistureShare: z.number().nullable(),
  pressureDrop: quantity(['psi', 'bar', 'kPa']).nullable(),
  why: Why,
  notes: line(2000).default(''),
  /** The bed was working that day: it counts as last seen then. */
  working: z.boolean(),
})
export type InspectBed = z.infer<typeof InspectBed>

/** A record whose data is weakest, with the one question that would sharpen its forecast most. */
export const AskRow = z.object({
  bedId: Id,
  siteId: Id,
  siteLabel: z.string(),
  town: z.string().nullable(),
  tank: TankLine.omit({ version: true }),
  customerName: z.string().nullable(),
  contacts: z.array(
    z.object({ id: Id, name: z.string().nullable(), role: z.string(), phone: z.string(), mayCall: z.boolean().nullable() }),
  ),
  weaknessYears: z.number(),
  question: Question,
  /** Why no forecast could be made, in a sentence: what is asked first then. */
  refusal: z.string().nullable(),
  due10Day: Day.nullable(),
  due90Day: Day.nullable(),
})
export type AskRow = z.infer<typeof AskRow>

export const beds = {
  explain: oc
    .route({ method: 'GET', path: '/beds/{bedId}/why' })
    .input(z.object({ bedId: Id }))
    .output(BedExplanation),
  page: oc
    .route({ method: 'GET', path: '/beds/{bedId}' })
    .input(z.object({ bedId: Id }))
    .output(BedPage),
  askNext: oc.route({ method: 'GET', path: '/beds/ask-next' }).input(page({})).output(pageOf(AskRow)),
  changeFacts: oc
    .route({ method: 'POST', path: '/beds/facts' })
    .input(ChangeBedFacts)
    .output(z.object({ bedId: Id, version: Version })),
  inspect: oc
    .route({ method: 'POST', path: '/beds/inspect' })
    .input(InspectBed)
    .output(z.object({ inspectionId: Id })),
}
