import { lost } from './nothing-there.ts'

export const one = lost
