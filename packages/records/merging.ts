/** What can be merged with another of its kind. */
export const mergeables = ['customer', 'site', 'town'] as const
export type Mergeable = (typeof mergeables)[number]
export const mergeableWords: Record<Mergeable, string> = { customer: 'Customer', site: 'Site', town: 'Town' }
