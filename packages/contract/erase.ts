import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Version } from './shared.ts'

/** How many rows besides the person's own were cleared of what named them. */
const Erased = z.object({ id: Id, places: z.number().int() })
export type Erased = z.infer<typeof Erased>

export const EraseCustomer = command({ customerId: Id, version: Version })
export type EraseCustomer = z.infer<typeof EraseCustomer>
export const EraseContact = command({ contactId: Id, version: Version })
export type EraseContact = z.infer<typeof EraseContact>
export const EraseColleague = command({ colleagueId: Id, version: Version })
export type EraseColleague = z.infer<typeof EraseColleague>

const post = (path: `/${string}`) => oc.route({ method: 'POST', path })

/** A person is erased for good: gone from every record, file and log, while what was done stays. No undo. */
export const erase = {
  customer: post('/erase/customer').input(EraseCustomer).output(Erased),
  contact: post('/erase/contact').input(EraseContact).output(Erased),
  /** One of the firm's own people, with their sign-in unless they work for another company here too. */
  colleague: post('/erase/colleague').input(EraseColleague).output(Erased),
}
