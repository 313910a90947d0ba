import { contactRoles } from '@almanac/records/contact-role'
import { messageStates } from '@almanac/records/message-state'
import { reportRefusals } from '@almanac/records/report-mail'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant } from './shared.ts'

/** Somebody who may get the service report of a visit, why they can't, and the last mail of it to them. */
export const ReportReader = z.object({
  contactId: Id,
  name: z.string().nullable(),
  role: z.enum(contactRoles),
  email: z.string().nullable(),
  refusal: z.enum(reportRefusals).nullable(),
  last: z.object({ messageId: Id, state: z.enum(messageStates), at: Instant, address: z.string(), kept: z.boolean() }).nullable(),
})
export type ReportReader = z.infer<typeof ReportReader>

export const ReportReaders = z.object({
  visitId: Id,
  /** Pictures that a tablet has begun to send and that would not be in it. */
  coming: z.number().int(),
  readers: z.array(ReportReader),
})
export type ReportReaders = z.infer<typeof ReportReaders>

export const SendReport = command({ visitId: Id, contactId: Id })
export type SendReport = z.infer<typeof SendReport>

export const reports = {
  readers: oc
    .route({ method: 'GET', path: '/reports/readers' })
    .input(z.object({ visitId: Id }))
    .output(ReportReaders),
  send: oc
    .route({ method: 'POST', path: '/reports/send' })
    .input(SendReport)
    .output(z.object({ messageId: Id })),
}
