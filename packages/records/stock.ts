/** What the stores keep. */
export const stockKinds = ['resin', 'gravel', 'tube', 'cap', 'seal', 'grease', 'sanitiser', 'container', 'other'] as const
export type StockKind = (typeof stockKinds)[number]

/** Why a quantity changed. */
export const movementReasons = ['received', 'used', 'counted', 'returned'] as const
export type MovementReason = (typeof movementReasons)[number]

/** What a booked rebed has reserved; `picked` is on the vehicle. */
export const reservationStates = ['reserved', 'picked', 'used', 'returned'] as const
export type ReservationState = (typeof reservationStates)[number]
