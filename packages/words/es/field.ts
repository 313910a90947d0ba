import type { FieldCatalogue } from '../catalogue.ts'
import { account } from './account.ts'
import { jobKind } from './job-kind.ts'

export const field: FieldCatalogue = { account, jobKind }
