import { oc } from '@orpc/contract'
import * as z from 'zod'
import { Id } from './shared.ts'
import { JobLine, TankLine } from './site-facts.ts'

const place = { siteLabel: z.string(), town: z.string().nullable() }
/** Where a site with a name of its own stands; null where the label says it. */
const street = z.string().nullable()

/** One answer of the search: whom or what it met, and where that is. */
export const Finding = z.discriminatedUnion('of', [
  z.object({ of: z.literal('person'), siteId: Id, name: z.string(), phone: z.string().nullable(), street, ...place }),
  z.object({ of: z.literal('address'), siteId: Id, customerName: z.string().nullable(), street, ...place }),
  z.object({ of: z.literal('tank'), bedId: Id, softenerLabel: z.string(), tank: TankLine.omit({ version: true }), ...place }),
  z.object({ of: z.literal('job'), jobId: Id, job: JobLine.omit({ id: true }), ...place }),
])
export type Finding = z.infer<typeof Finding>

export const find = {
  /** The best answers, by kind. What is looked for is sent in the body: names and telephones would stand in logs otherwise. `near`: nothing met it as typed. */
  look: oc
    .route({ method: 'POST', path: '/find' })
    .input(z.object({ q: z.string().trim().max(100) }))
    .output(z.object({ findings: z.array(Finding), near: z.boolean() })),
}
