/** What may be installed ahead of a softener. */
export const preTreatmentKinds = ['carbon', 'sediment', 'iron-filter'] as const
export type PreTreatmentKind = (typeof preTreatmentKinds)[number]

export const preTreatmentKindWords: Readonly<Record<PreTreatmentKind, string>> = {
  carbon: 'Carbon filter',
  sediment: 'Sediment filter',
  'iron-filter': 'Iron filter',
}
