import { arrangements } from '@almanac/records/arrangement'
import { channels } from '@almanac/records/channel'
import { consentSources } from '@almanac/records/consent-source'
import { MOST_OTHER_PHONES } from '@almanac/records/contact-phones'
import { contactRoles } from '@almanac/records/contact-role'
import { factSources } from '@almanac/records/fact-source'
import { languages } from '@almanac/records/language'
import { preTreatmentKinds } from '@almanac/records/pre-treatment-kind'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Entered, Id, Version } from './shared.ts'
import { line } from './site-facts.ts'

const Changed = z.object({ id: Id, version: Version })
const post = (path: `/${string}`) => oc.route({ method: 'POST', path })

/** A volume of resin as typed. */
export const ResinVolume = z.object({ value: Entered.shape.value, unit: z.enum(['ft3', 'L']) })

/** What is known of a softener, its tanks and their bed when it is taken down; everything may be blank. */
export const NewSoftener = z.object({
  label: line(120).default(''),
  location: line(120).default(''),
  arrangement: z.enum(arrangements).default('single'),
  /** As people write it: "10x54", "48,000 grain", "42 L". */
  tankSize: line(60).default(''),
  resinKind: z.enum(recordedResinKinds).default('unknown'),
  volume: ResinVolume.nullable().default(null),
  /** Why it is right, where it is unusual. */
  volumeWhy: Entered.shape.why,
  /** When the present bed went in, as people say it: "2014", "before 2015", "Mar 2012". */
  began: line(60).default(''),
  lastSeenDay: Day.nullable().default(null),
  source: z.enum(factSources).default('call'),
})
export type NewSoftener = z.infer<typeof NewSoftener>

/** Where a site stands, in degrees north and east (WGS 84). */
const Place = z.object({ latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(180) })

const Clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/)
/** When a site takes visits: weekdays from 1, Monday, none for any; times between which a visit begins and ends, null for no bound. */
const VisitHours = z
  .object({ weekdays: z.array(z.number().int().min(1).max(7)).max(7), from: Clock.nullable(), until: Clock.nullable() })
  .refine(({ from, until }) => from === null || until === null || from < until, 'Visiting hours must end after they start.')

const address = {
  label: line(120),
  street: line(160).default(''),
  town: line(120).default(''),
  region: line(120).default(''),
  postcode: line(20).default(''),
}

const contact = {
  role: z.enum(contactRoles),
  name: line(120).default(''),
  phone: line(40).default(''),
  /** Further numbers. Left out: as before. */
  otherPhones: z.array(line(40)).max(MOST_OTHER_PHONES).optional(),
  email: z.union([z.literal(''), z.email().max(160)]).default(''),
  /** In which their pages and papers are written; null: the company's own. Left out: as before. */
  language: z.enum(languages).nullable().optional(),
}

/** Who takes a site: a customer there is already, or a new one by name. */
export const Holder = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('known'), customerId: Id }),
  z.object({
    kind: z.literal('new'),
    name: line(160).min(1),
    phone: line(40).default(''),
    email: contact.email,
    consents: z.array(z.enum(channels)).max(4).default([]),
  }),
])
export type Holder = z.infer<typeof Holder>

export const AddSite = command({
  ...address,
  accessNotes: line(2000).default(''),
  waterSupplyId: Id.nullable().default(null),
  holder: Holder,
  softener: NewSoftener.nullable().default(null),
})
export type AddSite = z.infer<typeof AddSite>

export const ChangeSite = command({
  siteId: Id,
  version: Version,
  ...address,
  label: line(120).min(1),
  accessNotes: line(2000).default(''),
  notes: line(4000).default(''),
  waterSupplyId: Id.nullable(),
  /** Left out: as it was; null: not known. */
  place: Place.nullable().optional(),
  /** Left out: as they were. */
  visitHours: VisitHours.optional(),
})
export type ChangeSite = z.infer<typeof ChangeSite>

export const ChangeCustomer = command({
  customerId: Id,
  version: Version,
  name: line(160).min(1),
  reference: line(60).default(''),
  notes: line(4000).default(''),
})
export type ChangeCustomer = z.infer<typeof ChangeCustomer>

export const AddContact = command({ siteId: Id, ...contact, onlyThisSite: z.boolean().default(false) })
export type AddContact = z.infer<typeof AddContact>
export const ChangeContact = command({ contactId: Id, version: Version, ...contact })
export type ChangeContact = z.infer<typeof ChangeContact>
export const ArchiveContact = command({ contactId: Id, version: Version })
export type ArchiveContact = z.infer<typeof ArchiveContact>

/** The answer a person gave. `version` is null where nothing was recorded for the channel yet. */
export const SetConsent = command({
  contactId: Id,
  channel: z.enum(channels),
  granted: z.boolean(),
  source: z.enum(consentSources),
  sinceDay: Day,
  version: Version.nullable(),
})
export type SetConsent = z.infer<typeof SetConsent>

/** A house is sold: one tenure ends, another begins the day after. `tenureVersion` is null where nobody held the site. */
export const ChangeHolder = command({ siteId: Id, tenureVersion: Version.nullable(), fromDay: Day, holder: Holder })
export type ChangeHolder = z.infer<typeof ChangeHolder>

export const AddSoftener = command({ siteId: Id, softener: NewSoftener })
export type AddSoftener = z.infer<typeof AddSoftener>
export const ChangeSoftener = command({
  softenerId: Id,
  version: Version,
  label: line(120).min(1),
  location: line(120).default(''),
  arrangement: z.enum(arrangements),
  peopleServed: z.number().nullable(),
  /** Why so many people are right, where that is unusual. */
  why: Entered.shape.why,
  /** The card its valve goes by; left out, it stays as it is. */
  valveCardId: z.string().min(1).max(60).nullable().optional(),
  notes: line(4000).default(''),
})
export type ChangeSoftener = z.infer<typeof ChangeSoftener>

export const AddPreTreatment = command({
  softenerId: Id,
  kind: z.enum(preTreatmentKinds),
  fromDay: Day.nullable(),
  source: z.enum(factSources),
})
export type AddPreTreatment = z.infer<typeof AddPreTreatment>
/** `toDay` says when it was taken out; null means that it stands. */
export const EndPreTreatment = command({ preTreatmentId: Id, version: Version, toDay: Day })
export type EndPreTreatment = z.infer<typeof EndPreTreatment>

export const siteCommands = {
  add: post('/sites/add')
    .input(AddSite)
    .output(z.object({ siteId: Id })),
  change: post('/sites/change').input(ChangeSite).output(Changed),
  changeCustomer: post('/sites/customer').input(ChangeCustomer).output(Changed),
  changeHolder: post('/sites/holder')
    .input(ChangeHolder)
    .output(z.object({ tenureId: Id, customerId: Id })),
  addContact: post('/sites/contacts/add').input(AddContact).output(Changed),
  changeContact: post('/sites/contacts/change').input(ChangeContact).output(Changed),
  archiveContact: post('/sites/contacts/archive').input(ArchiveContact).output(Changed),
  setConsent: post('/sites/contacts/consent').input(SetConsent).output(Changed),
  addSoftener: post('/sites/softeners/add')
    .input(AddSoftener)
    .output(z.object({ softenerId: Id, bedIds: z.array(Id) })),
  changeSoftener: post('/sites/softeners/change').input(ChangeSoftener).output(Changed),
  addPreTreatment: post('/sites/pre-treatment/add').input(AddPreTreatment).output(Changed),
  endPreTreatment: post('/sites/pre-treatment/end').input(EndPreTreatment).output(Changed),
}
