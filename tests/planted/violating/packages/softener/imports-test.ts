import { sample } from './sample.test.ts'

export const one = sample
