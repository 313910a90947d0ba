/** How a softener's tanks share the work: together each takes half the flow; in turn one takes all of it while the other waits. */
export const arrangements = ['single', 'twin-alternating', 'twin-parallel'] as const
export type Arrangement = (typeof arrangements)[number]

/** Which of a softener's several tanks work is about; `position` is null where it is about all of them. A softener of one tank has none. */
export type TwinTank = { position: number | null; of: number; arrangement: Arrangement }

export const arrangementWords: Readonly<Record<Arrangement, string>> = {
  single: 'One tank',
  'twin-alternating': 'Twin tanks, one in service at a time',
  'twin-parallel': 'Twin tanks, both in service',
}
