/** Where water was drawn: before any treatment; after any carbon; after the softener, which says nothing about what reaches the bed. */
export const measuringPoints = ['softener-inlet', 'raw', 'softened'] as const
export type MeasuringPoint = (typeof measuringPoints)[number]

export const measuringPointWords: Readonly<Record<MeasuringPoint, string>> = {
  'softener-inlet': 'at the softener inlet, after any carbon',
  raw: 'raw, before any treatment',
  softened: 'softened, after the softener',
}
