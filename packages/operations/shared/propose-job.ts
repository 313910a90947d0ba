import type { ProposeJob } from '@almanac/contract/jobs'
import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import type { AskedFor } from '@almanac/records/asked-for'

/** A job that another use case adds, with how it was asked for. */
export type WantedJob = Omit<ProposeJob, 'commandId'> & { askedFor?: AskedFor }

/** Adds a job inside another use case's own transaction: jobs are written by their own domain, which the caller of that use case hands in. */
export type ProposeInside = (tx: Tx, command: Command, input: WantedJob) => Promise<{ jobId: string }>
