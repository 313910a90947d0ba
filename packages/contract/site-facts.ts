import { channels } from '@almanac/records/channel'
import { consentSources } from '@almanac/records/consent-source'
import { contactRoles } from '@almanac/records/contact-role'
import { endCauses } from '@almanac/records/end-cause'
import { jobKinds } from '@almanac/records/job-kind'
import { jobStates } from '@almanac/records/job-state'
import { languages } from '@almanac/records/language'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import * as z from 'zod'
import { Day, Id, Version } from './shared.ts'

/** A line of text as typed; blank means not known. */
export const line = (most: number) => z.string().trim().max(most)

/** One bed as lists show it. Days are 'YYYY-MM-DD', volumes ft³. */
export const BedLine = z.object({
  id: Id,
  resinKind: z.enum(recordedResinKinds),
  volumeFt3: z.number().nullable(),
  beganEarliest: Day.nullable(),
  beganLatest: Day.nullable(),
  beganAsWritten: z.string().nullable(),
  lastSeenDay: Day.nullable(),
  endedEarliest: Day.nullable(),
  endedLatest: Day.nullable(),
  endCause: z.enum(endCauses).nullable(),
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
  kind: z.enum(jobKinds),
  state: z.enum(jobStates),
  dueEarliest: Day.nullable(),
  dueLatest: Day.nullable(),
  visitDay: Day.nullable(),
})
export type JobLine = z.infer<typeof JobLine>

/** Who holds a site, and whom to call about it; `mayCall` is null where nobody asked. */
export const WhomToCall = z.object({
  customerName: z.string().nullable(),
  called: z
    .object({
      name: z.string().nullable(),
      role: z.enum(contactRoles),
      phone: z.string(),
      otherPhones: z.array(z.string()),
      mayCall: z.boolean().nullable(),
    })
    .nullable(),
})
export type WhomToCall = z.infer<typeof WhomToCall>

/** Whether a contact may be reached on a channel. Where nothing is recorded, there is no line. */
const ConsentLine = z.object({
  version: Version,
  channel: z.enum(channels),
  granted: z.boolean(),
  source: z.enum(consentSources),
  sinceDay: Day,
})

export const ContactLine = z.object({
  id: Id,
  version: Version,
  customerId: Id,
  /** Null: reached for every site of the customer. */
  siteId: Id.nullable(),
  role: z.enum(contactRoles),
  name: z.string().nullable(),
  phone: z.string().nullable(),
  /** Further numbers of theirs. */
  otherPhones: z.array(z.string()),
  email: z.string().nullable(),
  /** Mail to it came back: nothing is sent there until it is corrected. */
  emailIsDead: z.boolean(),
  /** Null: the company's own. */
  language: z.enum(languages).nullable(),
  consents: z.array(ConsentLine),
})
export type ContactLine = z.infer<typeof ContactLine>
