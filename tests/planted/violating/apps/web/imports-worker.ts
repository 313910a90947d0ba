import { task } from '../worker/task.ts'

export const one = task
