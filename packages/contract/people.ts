import { deviceKinds } from '@almanac/records/device-kind'
import { roles } from '@almanac/records/role'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { PersonName, SignInEmail } from './set-up.ts'
import { Id, Instant } from './shared.ts'

/** What somebody signed in with; null where its browser does not say. */
export const Device = z.object({ kind: z.enum(deviceKinds).nullable(), browser: z.string().nullable(), system: z.string().nullable() })
export type Device = z.infer<typeof Device>

/** One of the company's people who sign in. `elsewhere`: in another company here too. */
export const Member = z.object({
  personId: Id,
  name: z.string(),
  email: z.string(),
  role: z.enum(roles),
  elsewhere: z.boolean(),
  sessions: z.array(z.object({ id: Id, device: Device, startedAt: Instant })),
})
export type Member = z.infer<typeof Member>

export const Invitation = z.object({
  id: Id,
  name: z.string().nullable(),
  email: z.string().nullable(),
  role: z.enum(roles),
  colleagueId: Id.nullable(),
  expiresAt: Instant,
})
export type Invitation = z.infer<typeof Invitation>

/** A link that is shown this once: it is kept nowhere. `path` is null where it went by mail. */
export const ShownOnce = z.object({
  path: z.string().nullable(),
  sentTo: z.string().nullable(),
  expiresAt: Instant,
  mailFailed: z.boolean(),
})
export type ShownOnce = z.infer<typeof ShownOnce>

/** What an invited person sends; null for whoever is signed in. */
export const Join = z.object({ person: z.object({ name: PersonName, email: SignInEmail, password: z.string().max(1000) }).nullable() })
/** What someone with a link for it sends. */
export const SetPassword = z.object({ password: z.string().max(1000) })

const post = (path: `/${string}`) => oc.route({ method: 'POST', path })

export const people = {
  /** Who signs in, who is invited, and whether mail can be sent. */
  list: oc
    .route({ method: 'GET', path: '/people' })
    .output(z.object({ members: z.array(Member), invitations: z.array(Invitation), mail: z.boolean() })),
  /** With `byMail` the link is sent; otherwise it is answered, to be handed over. `colleagueId`: who of the day sheets they are. */
  invite: post('/people/invitations')
    .input(
      z.object({
        name: PersonName,
        email: SignInEmail.nullable(),
        role: z.enum(roles),
        colleagueId: Id.nullable(),
        byMail: z.boolean(),
      }),
    )
    .output(ShownOnce),
  withdraw: post('/people/invitations/withdraw')
    .input(z.object({ invitationId: Id }))
    .output(z.object({ withdrawn: Id })),
  /** `seen` is the role that the page showed. */
  changeRole: post('/people/role')
    .input(z.object({ personId: Id, role: z.enum(roles), seen: z.enum(roles) }))
    .output(z.object({ personId: Id, role: z.enum(roles) })),
  endAccess: post('/people/end')
    .input(z.object({ personId: Id }))
    .output(z.object({ ended: Id })),
  endSession: post('/people/sessions/end')
    .input(z.object({ sessionId: Id }))
    .output(z.object({ ended: Id })),
  passwordLink: post('/people/password-link')
    .input(z.object({ personId: Id }))
    .output(ShownOnce),
}
