import { readFileSync } from 'node:fs'
import { tank } from './tank.ts'

export const sample = { tank, readFileSync }
