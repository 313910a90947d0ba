import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant } from './shared.ts'

/** When everything of the company is erased; null: it is not being closed. */
const CompanyClosing = z.object({ closesAt: Instant.nullable() })
export type CompanyClosing = z.infer<typeof CompanyClosing>

/** The company that the page shows. */
export const CloseCompany = command({ companyId: Id })
export type CloseCompany = z.infer<typeof CloseCompany>
export const KeepCompany = command({ companyId: Id })
export type KeepCompany = z.infer<typeof KeepCompany>

/** A company is closed by its owner, and kept after all until its day has come. */
export const closing = {
  close: oc.route({ method: 'POST', path: '/closing/close' }).input(CloseCompany).output(CompanyClosing),
  keep: oc.route({ method: 'POST', path: '/closing/keep' }).input(KeepCompany).output(CompanyClosing),
}
