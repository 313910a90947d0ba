/** What can be merged with another of its kind. */
export const mergeables = ['customer', 'site', 'town', 'supply'] as const
export type Mergeable = (typeof mergeables)[number]
export const mergeableWords: Record<Mergeable, string> = { customer: 'Customer', site: 'Site', town: 'Town', supply: 'Water supply' }

/** What moves with a merging, and is spoken of before it is undone. */
export const movedKinds = [
  ...([
    'tenure',
    'contact',
    'phone_call',
    'call_back',
    'agreement',
    'softener',
    'water_test',
    'job',
    'reminder',
    'import_row',
    'site',
    'supply_period',
  ] as const),
] as const
export type MovedKind = (typeof movedKinds)[number]
export const movedKindWords: Record<MovedKind, [one: string, more: string]> = {
  tenure: ['site held', 'sites held'],
  contact: ['contact', 'contacts'],
  phone_call: ['call', 'calls'],
  call_back: ['call back', 'calls back'],
  agreement: ['agreement', 'agreements'],
  softener: ['softener', 'softeners'],
  water_test: ['water test', 'water tests'],
  job: ['job', 'jobs'],
  reminder: ['reminder', 'reminders'],
  import_row: ['imported line', 'imported lines'],
  site: ['site', 'sites'],
  supply_period: ['entry of water quality', 'entries of water quality'],
}
