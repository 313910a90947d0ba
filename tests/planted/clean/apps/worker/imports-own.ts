import { task } from './task.ts'

export const one = task
