import { dayFills } from '@almanac/records/day-plan'
import { HEAD_LINES } from '@almanac/records/letterhead'
import { papers } from '@almanac/records/paper'
import { valveControls } from '@almanac/records/valve-control'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { DrivesLearned, DrivesTaken, TakeDrivesInput } from './drive-pace.ts'
import { command, Day, Id, Instant, page, pageOf, SeenVersion, Version } from './shared.ts'

const number = z.number().min(-1e9).max(1e9)
const Range = z.strictObject({ min: number.optional(), usual: number, max: number.optional() })
const words = (most: number) => z.string().max(most)

const TankValue = z.strictObject({
  diameterIn: number,
  heightIn: number,
  resinFt3: Range,
  gravelLb: Range,
  openingsIn: z.array(number).min(1).max(4),
})
const ValveValue = z.strictObject({
  label: words(80),
  labelWords: z.array(words(40)).max(20),
  control: z.enum(valveControls),
  tubeOdIn: number.nullable(),
  backwashGpm: z.array(number).max(20),
  refillGpm: number.nullable(),
  tubeRule: words(300),
  seals: words(300),
})
const Backwash = z.strictObject({ min: number, usual: number, max: number })
const Reserve = z.union([
  z.strictObject({ kind: z.literal('days'), days: number }),
  z.strictObject({ kind: z.literal('share'), share: number }),
])
/** Forms a figure may have: a number, bag sizes, points of a curve, a tank, a valve card, a backwash, a reserve. What the number may be is checked by the calculation that uses it. */
export const FigureValue = z.union([
  number,
  z.array(number).min(1).max(6),
  z
    .array(z.tuple([number, number]))
    .min(2)
    .max(12),
  TankValue,
  ValveValue,
  Backwash,
  Reserve,
])
export type FigureValue = z.infer<typeof FigureValue>

/** `tank:10x54`, `valve:<id>`, `curve:gel-8`, `gravel-from-ft3` … */
const FigureKey = z
  .string()
  .max(80)
  .regex(/^[a-z][a-z0-9-]*(?::[A-Za-z0-9.-]+)?$/, 'A value is named like tank:10x54 or gravel-from-ft3.')

/** A figure the firm has or had of its own; one put back to usual keeps its row, so that its version goes on. */
export const FigureRow = z.object({
  id: Id,
  version: Version,
  key: z.string(),
  value: FigureValue,
  note: z.string().nullable(),
  inUse: z.boolean(),
})
export type FigureRow = z.infer<typeof FigureRow>

export const ChangeFigureInput = command({
  key: FigureKey,
  version: SeenVersion,
  value: FigureValue,
  note: z.string().trim().max(300).nullable(),
})
export type ChangeFigureInput = z.infer<typeof ChangeFigureInput>
export const ResetFigureInput = command({ key: FigureKey, version: Version, note: z.string().trim().max(300).nullable() })
export type ResetFigureInput = z.infer<typeof ResetFigureInput>
const Changed = z.object({ id: Id, key: z.string(), version: Version })

const Clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'A time is written like 08:00.')
/** A few lines of a paper's head. */
const headText = (lines: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(lines * 60)
    .refine((text) => text.split('\n').length <= lines, `At most ${lines} lines have room at the head of a paper.`)
    .refine((text) => text.split('\n').every((line) => line.length <= 60), 'A line at the head of a paper has room for 60 characters.')
const cost = z.number().int().min(0).max(2_000_000_000).nullable()

/** How the firm works and what its work costs, in minor units of its currency; null where it has not said. */
export const SettingsValues = z.object({
  reminderLeadDays: z.number().int().min(0).max(730),
  /** How many notices of one window a customer gets at the most, and how many days after one that nobody answered the next is due. */
  reminderNotices: z.number().int().min(1).max(3),
  reminderAgainDays: z.number().int().min(7).max(365),
  /** When mails and texts may go out, at the customer's clock. */
  sendFrom: Clock,
  sendUntil: Clock,
  rebedsPerMonth: z.number().int().min(0).max(100_000),
  dayStart: Clock,
  dayEnd: Clock,
  plannedRebedMinor: cost,
  failureMinor: cost,
  beadsMinor: cost,
  overtimeMinorPerHour: cost,
  /** Largest chance of failing before its rebed that the owner accepts for a bed. */
  riskLimit: z.number().min(0.01).max(1),
  /** The firm learns together with others that chose to, by the figures of its fits. */
  poolFits: z.boolean(),
  /** Lunch of whoever has no breaks of their own, begun between the two; 0 minutes: none. */
  lunchMinutes: z.number().int().min(0).max(120),
  lunchFrom: Clock,
  lunchUntil: Clock,
  /** Minutes at the end of a day that plans and places leave free. */
  inHandMinutes: z.number().int().min(0).max(240),
  /** How full plans and best places make a day. */
  dayFill: z.enum(dayFills),
  /** A country, or a region of one, whose public holidays are kept, as "US" or "DE-BY"; null: none. */
  holidayArea: z.string().max(20).nullable(),
  /** Those of its holidays on which the firm works, by name. */
  holidaysWorked: z.array(z.string().max(120)).max(60),
  /** Where crews start and end their days, degrees north and east. */
  yardLatitude: z.number().min(-90).max(90).nullable(),
  yardLongitude: z.number().min(-180).max(180).nullable(),
  /** Where customers call: shown on their pages and papers. */
  telephone: z
    .string()
    .trim()
    .min(3, 'A phone number has at least three digits.')
    .max(40)
    .regex(/^[+()\d\s./x-]+$/i, 'Type a phone number, such as (630) 555-0142.')
    .nullable(),
  /** What heads its papers besides: lines of the address and of the licence, and where to write. */
  headAddress: headText(HEAD_LINES.address).nullable(),
  headMail: z
    .string()
    .trim()
    .max(120)
    .regex(/^[^\s@]+@[^\s@]+\.[^\s@]+$/, 'An email looks like office@firm.com.')
    .nullable(),
  headLicence: headText(HEAD_LINES.licence).nullable(),
  /** The company's own name, as its customers know it. */
  name: z.string().trim().min(1, 'Enter the company’s name.').max(120),
  /** What its papers are printed on. */
  paper: z.enum(papers),
  /** How numbers, money, days and clocks are written: a BCP 47 tag. */
  locale: z
    .string()
    .max(35)
    .regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'A locale is written like en-US.'),
})
export type SettingsValues = z.infer<typeof SettingsValues>

/** `logo`: its size in pixels, where there is one; it is at /api/logo. */
export const Settings = SettingsValues.extend({
  version: SeenVersion,
  logo: z.object({ width: z.number(), height: z.number() }).nullable(),
})
export type Settings = z.infer<typeof Settings>

export const ChangeSettingsInput = command({
  version: SeenVersion,
  ...SettingsValues.shape,
  /** Left out: stays as it is. */
  poolFits: z.boolean().optional(),
  reminderNotices: SettingsValues.shape.reminderNotices.optional(),
  reminderAgainDays: SettingsValues.shape.reminderAgainDays.optional(),
  sendFrom: Clock.optional(),
  sendUntil: Clock.optional(),
  locale: SettingsValues.shape.locale.optional(),
  telephone: SettingsValues.shape.telephone.optional(),
  headAddress: SettingsValues.shape.headAddress.optional(),
  headMail: SettingsValues.shape.headMail.optional(),
  headLicence: SettingsValues.shape.headLicence.optional(),
  name: SettingsValues.shape.name.optional(),
  paper: SettingsValues.shape.paper.optional(),
  lunchMinutes: SettingsValues.shape.lunchMinutes.optional(),
  lunchFrom: Clock.optional(),
  lunchUntil: Clock.optional(),
  inHandMinutes: SettingsValues.shape.inHandMinutes.optional(),
  dayFill: SettingsValues.shape.dayFill.optional(),
  holidayArea: SettingsValues.shape.holidayArea.optional(),
  holidaysWorked: SettingsValues.shape.holidaysWorked.optional(),
  note: z.string().trim().max(300).nullable(),
})
export type ChangeSettingsInput = z.infer<typeof ChangeSettingsInput>

/** The file of a logo, of at most this many bytes; they are sent as base64. */
export const MOST_LOGO_BYTES = 600_000
export const ChangeLogoInput = command({
  version: SeenVersion,
  /** Null takes the logo off. */
  picture: z
    .base64()
    .max(Math.ceil(MOST_LOGO_BYTES / 3) * 4, 'The logo’s file is larger than 600 kB. The old one was kept; choose a smaller file.')
    .nullable(),
})
export type ChangeLogoInput = z.infer<typeof ChangeLogoInput>

/** One change, newest first. `field` and values as stored: `tank:10x54`, `reminderLeadDays`. `to` is null where it was put back to usual. */
export const FigureChange = z.object({
  id: Id,
  at: Instant,
  who: z.string().nullable(),
  field: z.string(),
  from: z.json().nullable(),
  to: z.json().nullable(),
  note: z.string().nullable(),
})
export type FigureChange = z.infer<typeof FigureChange>

export const firm = {
  figures: oc.route({ method: 'GET', path: '/firm/figures' }).output(z.object({ rows: z.array(FigureRow) })),
  changeFigure: oc.route({ method: 'POST', path: '/firm/figures' }).input(ChangeFigureInput).output(Changed),
  resetFigure: oc.route({ method: 'POST', path: '/firm/figures/usual' }).input(ResetFigureInput).output(Changed),
  drives: oc.route({ method: 'GET', path: '/firm/drives' }).output(DrivesLearned),
  takeDrives: oc.route({ method: 'POST', path: '/firm/drives' }).input(TakeDrivesInput).output(DrivesTaken),
  settings: oc.route({ method: 'GET', path: '/firm/settings' }).output(Settings),
  /** Whose public holidays can be kept, and those of one area from today on, for a year. */
  holidays: oc
    .route({ method: 'GET', path: '/firm/holidays' })
    .input(z.object({ area: z.string().max(20).optional() }))
    .output(
      z.object({
        areas: z.array(z.object({ value: z.string(), label: z.string() })),
        holidays: z.array(z.object({ day: Day, name: z.string() })),
      }),
    ),
  changeSettings: oc
    .route({ method: 'POST', path: '/firm/settings' })
    .input(ChangeSettingsInput)
    .output(z.object({ version: Version })),
  changeLogo: oc
    .route({ method: 'POST', path: '/firm/logo' })
    .input(ChangeLogoInput)
    .output(z.object({ version: Version })),
  /** The name and lines that head a paper, and whether a logo does: for what a browser prints. */
  letterhead: oc
    .route({ method: 'GET', path: '/firm/letterhead' })
    .output(z.object({ firmName: z.string(), lines: z.array(z.string()), logo: z.boolean() })),
  history: oc
    .route({ method: 'GET', path: '/firm/history' })
    .input(page({ key: FigureKey.optional() }))
    .output(pageOf(FigureChange)),
}
