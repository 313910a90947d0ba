import type { ProposeJob } from '@almanac/contract/jobs'
import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'

/** Adds a job inside another use case's own transaction: jobs are written by their own domain, which the caller of that use case hands in. */
export type ProposeInside = (tx: Tx, command: Command, input: Omit<ProposeJob, 'commandId'>) => Promise<{ jobId: string }>
