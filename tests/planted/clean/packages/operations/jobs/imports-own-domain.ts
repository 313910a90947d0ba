import { inCompany } from '@almanac/database/in-company'
import { ok } from '@almanac/units/result'
import { visit } from './visit.ts'

export const all = { inCompany, ok, visit }
