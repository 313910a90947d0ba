/** The states of a job. What may follow what is a rule: service-rules/jobs/job-states. */
export const jobStates = ['proposed', 'booked', 'under-way', 'held', 'closed', 'called-off'] as const
export type JobState = (typeof jobStates)[number]

export const jobStateWords: Readonly<Record<JobState, string>> = {
  proposed: 'proposed',
  booked: 'booked',
  'under-way': 'under way',
  held: 'held',
  closed: 'closed',
  'called-off': 'called off',
}

/** True while something is still to be done: such a job keeps reminders silent and stands in the way of a second one. */
export function isOpenJob(state: JobState): boolean {
  return state !== 'closed' && state !== 'called-off'
}

/** The states in which something is still to be done. */
export const openJobStates: readonly JobState[] = jobStates.filter(isOpenJob)
