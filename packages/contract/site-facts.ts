import * as z from 'zod'
import { Day, Id, Version } from './shared.ts'

export const ContactRole = z.enum(['payer', 'occupier', 'landlord', 'key-holder'])
export const Channel = z.enum(['email', 'phone', 'text', 'letter'])
export const ConsentSource = z.enum(['call', 'visit', 'letter', 'link', 'import'])
export const ResinKind = z.enum(['gel-8', 'gel-10', 'fine-mesh', 'unknown'])
export const Arrangement = z.enum(['single', 'twin-alternating', 'twin-parallel'])
export const PreTreatmentKind = z.enum(['carbon', 'sediment', 'iron-filter'])

/** Where a person has a fact from; kept beside the fact with the day. */
export const FactSource = z.enum(['call', 'label', 'measured', 'papers'])
export type FactSource = z.infer<typeof FactSource>

/** A line of text as typed; blank means not known. */
export const line = (most: number) => z.string().trim().max(most)

/** One bed as lists show it. Days are 'YYYY-MM-DD', volumes ft³. */
export const BedLine = z.object({
  id: Id,
  resinKind: ResinKind,
  volumeFt3: z.number().nullable(),
  beganEarliest: Day.nullable(),
  beganLatest: Day.nullable(),
  beganAsWritten: z.string().nullable(),
  lastSeenDay: Day.nullable(),
  endedEarliest: Day.nullable(),
  endedLatest: Day.nullable(),
  endCause: z.string().nullable(),
  due10Day: Day.nullable(),
  due50Day: Day.nullable(),
  due90Day: Day.nullable(),
  chance12Months: z.number().nullable(),
})
export type BedLine = z.infer<typeof BedLine>

/** A tank's size in inches, with what was written where it could not be read. */
export const TankLine = z.object({
  id: Id,
  version: Version,
  position: z.number(),
  diameterIn: z.number().nullable(),
  heightIn: z.number().nullable(),
  nominalGrains: z.number().nullable(),
  sizeAsWritten: z.string().nullable(),
})
export type TankLine = z.infer<typeof TankLine>

/** A job that is still to be done, as a line. */
export const JobLine = z.object({
  id: Id,
  kind: z.string(),
  state: z.string(),
  dueEarliest: Day.nullable(),
  dueLatest: Day.nullable(),
  visitDay: Day.nullable(),
})
export type JobLine = z.infer<typeof JobLine>

/** Whether a contact may be reached on a channel. Where nothing is recorded, there is no line. */
export const ConsentLine = z.object({ version: Version, channel: Channel, granted: z.boolean(), source: z.string(), sinceDay: Day })

export const ContactLine = z.object({
  id: Id,
  version: Version,
  customerId: Id,
  /** Null: reached for every site of the customer. */
  siteId: Id.nullable(),
  role: ContactRole,
  name: z.string().nullable(),
  phone: z.string().nullable(),
  email: z.string().nullable(),
  consents: z.array(ConsentLine),
})
export type ContactLine = z.infer<typeof ContactLine>
