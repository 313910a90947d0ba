import { languages } from '@almanac/records/language'
import { permissions } from '@almanac/records/permission'
import { roles } from '@almanac/records/role'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { FigureRow } from './firm.ts'
import { Device } from './people.ts'
import { SignInEmail } from './set-up.ts'
import { Day, Id, Instant } from './shared.ts'

/** Itself how this person reads what the company shows: see `Display` in units. `locale` is the person's language in the company's region. */
const Company = z.object({
  id: Id,
  name: z.string(),
  timeZone: z.string(),
  unitSystem: z.enum(['us', 'metric']),
  currency: z.string(),
  locale: z.string(),
  /** When everything of it is erased; null: it is not being closed. */
  closesAt: Instant.nullable(),
})

/** Who is signed in, in which company, and what the screens may offer. `today` is the day in the company's zone. */
const Me = z.object({
  person: z.object({ id: Id, name: z.string(), email: z.string(), language: z.enum(languages).nullable(), secondStep: z.boolean() }),
  company: Company,
  role: z.enum(roles),
  permissions: z.array(z.enum(permissions)),
  companies: z.array(z.object({ id: Id, name: z.string(), role: z.enum(roles) })),
  today: Day,
  /** The company's own figures, so that every screen computes with them from its first moment, a tablet's without signal too. */
  figures: z.array(FigureRow),
})
export type Me = z.infer<typeof Me>

export const session = {
  switchCompany: oc
    .route({ method: 'POST', path: '/session/company' })
    .input(z.object({ companyId: Id }))
    .output(z.object({ companyId: Id })),
  /** The language in which the person reads, in every company; null for each company's own. */
  setLanguage: oc
    .route({ method: 'POST', path: '/session/language' })
    .input(z.object({ language: z.enum(languages).nullable() }))
    .output(z.object({ language: z.enum(languages).nullable() })),
  /** The email that the person signs in with. `sentTo`: a link went there, which does it; null where it is done. */
  changeEmail: oc
    .route({ method: 'POST', path: '/session/email' })
    .input(z.object({ email: SignInEmail, password: z.string().max(1000) }))
    .output(z.object({ sentTo: z.string().nullable() })),
  list: oc
    .route({ method: 'GET', path: '/session/list' })
    .output(z.array(z.object({ id: Id, startedAt: Instant, device: Device, present: z.boolean() }))),
  end: oc
    .route({ method: 'POST', path: '/session/end' })
    .input(z.object({ sessionId: Id }))
    .output(z.object({ ended: Id })),
  /** The person's own passkeys, by what each was added on and the program that keeps it. */
  passkeys: oc
    .route({ method: 'GET', path: '/session/passkeys' })
    .output(z.array(z.object({ id: Id, device: Device, keptBy: z.string().nullable(), addedAt: Instant, lastUsedAt: Instant.nullable() }))),
  removePasskey: oc
    .route({ method: 'POST', path: '/session/passkeys/remove' })
    .input(z.object({ passkeyId: Id }))
    .output(z.object({ removed: Id })),
}
