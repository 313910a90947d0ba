import { ok } from '@almanac/units/result'
import { tank } from './tank.ts'

export const both = { ok, tank }
