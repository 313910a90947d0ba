/** Every background task, with what its payload carries beside the company. Ids only: no personal data in a queue. */
export type TaskPayloads = {
  /** Recompute some beds' forecasts; `cause` is one of forecast_run.cause. */
  'forecast-beds': { companyId: string; bedIds: string[]; cause: string }
  /** Recompute every bed of a company, or of one supply. */
  'forecast-company': { companyId: string; waterSupplyId?: string; batchId?: string; cause: string; runId?: string }
  /** Fit the life model to a company's records and recompute every bed with it; `runId` carries on a run that was broken off. */
  'refit-company': { companyId: string; cause: string; runId?: string }
  /** Hold a company's past forecasts against what came. */
  'backtest-company': { companyId: string }
  /** Spread the rebeds to come over months, against crew capacity. */
  'plan-rebeds': { companyId: string }
  /** Sum the month picture again from the beds' stored chances. */
  'forecast-months': { companyId: string }
  /** Raise and drop reminders from the present forecasts. */
  'raise-reminders': { companyId: string }
  /** Send the messages that are approved and may go out now. */
  'send-messages': { companyId: string }
  /** Read the file of an import. */
  'read-file': { companyId: string; batchId: string }
  /** Write an import batch. */
  'apply-import': { companyId: string; batchId: string }
  /** Write everything of a company into one archive. */
  'export-company': { companyId: string; exportId: string }
  /** Take the files of erased pictures out of the store. */
  'remove-pictures': { companyId: string }
  /** Free the times offered to customers who did not choose in time. */
  'lapse-offers': { companyId: string }
  /** Work a plan of day sheets out for a dispatcher. */
  'work-out-plan': { companyId: string; planId: string }
  /** Look through the mailbox of bounces: it is one for all companies, and each report says whose it is. */
  'read-bounces': Record<string, never>
  /** Every night: one 'refit-company', one 'raise-reminders' and one 'send-messages' a company; and what happened to people's ways in a year ago is forgotten. Companies that were closed are erased on their day. */
  nightly: Record<string, never>
}

export type QueueName = keyof TaskPayloads

/** 'short' keeps one waiting task per singleton key: asking twice for the same sum does it once. */
export const QUEUES: { name: QueueName; policy: 'standard' | 'short' }[] = [
  { name: 'forecast-beds', policy: 'standard' },
  { name: 'forecast-company', policy: 'standard' },
  { name: 'refit-company', policy: 'short' },
  { name: 'backtest-company', policy: 'short' },
  { name: 'plan-rebeds', policy: 'short' },
  { name: 'forecast-months', policy: 'short' },
  { name: 'raise-reminders', policy: 'short' },
  { name: 'send-messages', policy: 'short' },
  { name: 'read-file', policy: 'standard' },
  { name: 'apply-import', policy: 'standard' },
  { name: 'export-company', policy: 'standard' },
  { name: 'remove-pictures', policy: 'short' },
  { name: 'lapse-offers', policy: 'standard' },
  { name: 'work-out-plan', policy: 'standard' },
  { name: 'read-bounces', policy: 'short' },
  { name: 'nightly', policy: 'short' },
]
