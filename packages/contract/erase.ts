import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Version } from './shared.ts'

/** How many rows besides the person's own were cleared of what named them. */
const Erased = z.object({ id: Id, places: z.number().int() })
export type Erased = z.infer<typeof Erased>

/** What erasing somebody takes: their own records by kind, and other places that name them. */
const ErasedCounts = z.object({
  contacts: z.number().int(),
  messages: z.number().int(),
  listLines: z.number().int(),
  pictures: z.number().int(),
  exports: z.number().int(),
  places: z.number().int(),
})
export type ErasedCounts = z.infer<typeof ErasedCounts>

export const EraseCustomer = command({ customerId: Id, version: Version })
export type EraseCustomer = z.infer<typeof EraseCustomer>
export const EraseContact = command({ contactId: Id, version: Version })
export type EraseContact = z.infer<typeof EraseContact>
export const EraseColleague = command({ colleagueId: Id, version: Version })
export type EraseColleague = z.infer<typeof EraseColleague>

const post = (path: `/${string}`) => oc.route({ method: 'POST', path })

/** A person is erased for good: gone from every record, file and log, while what was done stays. No undo. */
export const erase = {
  /** What erasing would take; nothing is changed. */
  previewCustomer: oc
    .route({ method: 'GET', path: '/erase/customer' })
    .input(z.object({ customerId: Id }))
    .output(ErasedCounts),
  previewContact: oc
    .route({ method: 'GET', path: '/erase/contact' })
    .input(z.object({ contactId: Id }))
    .output(ErasedCounts),
  previewColleague: oc
    .route({ method: 'GET', path: '/erase/colleague' })
    .input(z.object({ colleagueId: Id }))
    .output(ErasedCounts),
  customer: post('/erase/customer').input(EraseCustomer).output(Erased),
  contact: post('/erase/contact').input(EraseContact).output(Erased),
  /** One of the firm's own people, with their sign-in unless they work for another company here too. */
  colleague: post('/erase/colleague').input(EraseColleague).output(Erased),
}
