import { arrangements } from '@almanac/records/arrangement'
import { recordedDisinfectants } from '@almanac/records/disinfectant'
import { preTreatmentKinds } from '@almanac/records/pre-treatment-kind'
import { supplyKinds } from '@almanac/records/supply-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { Day, Id, page, pageOf, Version } from './shared.ts'
import { siteCommands } from './site-commands.ts'
import { BedLine, ContactLine, JobLine, TankLine, WhomToCall } from './site-facts.ts'
import { SiteHappening } from './site-history.ts'

/** One site in the list, with the bed of it that comes due first. */
export const SiteRow = z.object({
  id: Id,
  label: z.string(),
  street: z.string().nullable(),
  town: z.string().nullable(),
  customerName: z.string().nullable(),
  tanks: z.array(TankLine.omit({ version: true })),
  /** Open beds, the one due first at the head. */
  beds: z.array(BedLine),
  nextJob: JobLine.nullable(),
})
export type SiteRow = z.infer<typeof SiteRow>

/** Degrees north and east. */
const Place = z.object({ latitude: z.number(), longitude: z.number() })

const get = (path: `/${string}`) => oc.route({ method: 'GET', path })

const SiteTank = TankLine.extend({ beds: z.array(BedLine) })
export const SiteSoftener = z.object({
  id: Id,
  version: Version,
  label: z.string(),
  location: z.string().nullable(),
  arrangement: z.enum(arrangements),
  installedEarliest: Day.nullable(),
  installedLatest: Day.nullable(),
  installedAsWritten: z.string().nullable(),
  peopleServed: z.number().nullable(),
  /** The firm's or the usual card its valve goes by. */
  valveCardId: z.string().nullable(),
  notes: z.string().nullable(),
  condemnedDay: Day.nullable(),
  tanks: z.array(SiteTank),
  preTreatments: z.array(
    z.object({
      id: Id,
      version: Version,
      kind: z.enum(preTreatmentKinds),
      fromDay: Day.nullable(),
      toDay: Day.nullable(),
      source: z.string(),
    }),
  ),
})
export type SiteSoftener = z.infer<typeof SiteSoftener>

export const SiteTenure = z.object({
  id: Id,
  version: Version,
  fromDay: Day.nullable(),
  toDay: Day.nullable(),
  customer: z.object({
    id: Id,
    version: Version,
    name: z.string(),
    reference: z.string().nullable(),
    notes: z.string().nullable(),
    sites: z.number(),
  }),
})
export type SiteTenure = z.infer<typeof SiteTenure>

/** A site with all that stands there. `tenures` has the present holder first; contacts are those of the present holder. */
export const SitePage = z.object({
  id: Id,
  version: Version,
  label: z.string(),
  street: z.string().nullable(),
  town: z.string().nullable(),
  region: z.string().nullable(),
  /** Degrees north and east (WGS 84); null where nobody wrote the place down. */
  place: Place.nullable(),
  visitHours: z.object({ weekdays: z.array(z.number()), from: z.string().nullable(), until: z.string().nullable() }),
  postcode: z.string().nullable(),
  accessNotes: z.string().nullable(),
  notes: z.string().nullable(),
  supply: z
    .object({
      id: Id,
      name: z.string(),
      kind: z.enum(supplyKinds),
      disinfectant: z.enum(recordedDisinfectants).nullable(),
      residualMgL: z.number().nullable(),
    })
    .nullable(),
  tenures: z.array(SiteTenure),
  whom: WhomToCall,
  contacts: z.array(ContactLine),
  softeners: z.array(SiteSoftener),
  openJobs: z.array(JobLine),
})
export type SitePage = z.infer<typeof SitePage>

const bySite = z.object({ siteId: Id })

export const sites = {
  list: get('/sites')
    .input(page({ q: z.string().trim().max(200).optional() }))
    .output(pageOf(SiteRow)),
  page: get('/sites/{siteId}').input(bySite).output(SitePage),
  /** `more` says that older happenings were left out. */
  history: get('/sites/{siteId}/history')
    .input(bySite)
    .output(z.object({ happenings: z.array(SiteHappening), more: z.boolean() })),
  /** The yard and the nearest sites whose place is known, to set a site's pin by. */
  nearby: get('/sites/{siteId}/nearby')
    .input(bySite)
    .output(z.object({ yard: Place.nullable(), places: z.array(z.object({ id: Id, label: z.string(), place: Place })) })),
  supplies: get('/sites/choices/supplies').output(
    z.array(z.object({ id: Id, name: z.string(), kind: z.enum(supplyKinds), sites: z.number().int() })),
  ),
  /** Customers whose name begins so, for handing a site over. */
  customers: get('/sites/choices/customers')
    .input(z.object({ q: z.string().trim().min(1).max(100) }))
    .output(z.array(z.object({ id: Id, name: z.string(), reference: z.string().nullable(), sites: z.number() }))),
  ...siteCommands,
}
