/** How a softener's tanks share the work: together each takes half the flow; in turn one takes all of it while the other waits. */
export const arrangements = ['single', 'twin-alternating', 'twin-parallel'] as const
export type Arrangement = (typeof arrangements)[number]

export const arrangementWords: Readonly<Record<Arrangement, string>> = {
  single: 'One tank',
  'twin-alternating': 'Twin tanks, one in service at a time',
  'twin-parallel': 'Twin tanks, both in service',
}
