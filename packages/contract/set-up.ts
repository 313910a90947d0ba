import * as z from 'zod'
import { SettingsValues } from './firm.ts'

/** A name people go by: one line. */
export const PersonName = z
  .string()
  .trim()
  .min(1, 'Enter a name.')
  .max(80, 'A name has at most 80 characters.')
  .regex(/^[^\p{Cc}<>]+$/u, 'A name is one line without < and >.')
/** An address to sign in with; kept in small letters. */
export const SignInEmail = z
  .string()
  .trim()
  .toLowerCase()
  .max(254)
  .regex(/^[\x21-\x3f\x41-\x7e]+@[\x21-\x3f\x41-\x7e]+\.[\x21-\x3f\x41-\x7e]+$/, 'An email looks like name@company.com.')
/** Length is told by whoever checks the whole password. */
const NewPassword = z.string().max(1000)

/** A company as it is founded. Zone, currency and locale are checked against what the platform knows. */
export const NewCompany = z.object({
  name: SettingsValues.shape.name,
  telephone: SettingsValues.shape.telephone,
  locale: SettingsValues.shape.locale,
  unitSystem: z.enum(['us', 'metric']),
  timeZone: z.string().max(64),
  currency: z.string().length(3),
  paper: SettingsValues.shape.paper,
  dayStart: SettingsValues.shape.dayStart,
  dayEnd: SettingsValues.shape.dayEnd,
})
export type NewCompany = z.infer<typeof NewCompany>

/** Someone who signs in here for the first time. */
const NewPerson = z.object({ name: PersonName, email: SignInEmail, password: NewPassword })

/** What the set-up page sends; `owner` is null for whoever is signed in already. */
export const SetUp = z.object({ company: NewCompany, owner: NewPerson.nullable() })
export type SetUp = z.infer<typeof SetUp>

/** Somebody who is not signed in asks for a link by mail. */
export const AskMail = z.object({ purpose: z.enum(['password', 'set-up']), email: SignInEmail })
export type AskMail = z.infer<typeof AskMail>
