/** What the stores keep. */
export const stockKinds = ['resin', 'gravel', 'tube', 'cap', 'seal', 'grease', 'sanitiser', 'container', 'salt', 'other'] as const
export type StockKind = (typeof stockKinds)[number]

/** What one of a quantity is. */
export const stockUnits = ['bag', 'lb', 'piece', 'set', 'fl oz'] as const
export type StockUnit = (typeof stockUnits)[number]

/** The units each kind is counted in, the usual one first: a kit takes what it needs in these and no others. */
export const unitsOfStock: Readonly<Record<StockKind, readonly [StockUnit, ...StockUnit[]]>> = {
  resin: ['bag'],
  gravel: ['lb'],
  tube: ['piece'],
  cap: ['piece'],
  seal: ['set', 'piece'],
  grease: ['piece'],
  sanitiser: ['fl oz'],
  container: ['piece'],
  salt: ['bag', 'lb', 'piece'],
  other: ['piece', 'bag', 'lb', 'set', 'fl oz'],
}

/** Why a quantity changed. */
export const movementReasons = ['received', 'used', 'counted', 'returned', 'handed-over'] as const
export type MovementReason = (typeof movementReasons)[number]

/** What a booked rebed has reserved; `picked` is on the vehicle. */
export const reservationStates = ['reserved', 'picked', 'used', 'returned'] as const
export type ReservationState = (typeof reservationStates)[number]

/** A line of materials a customer asked for: set aside for them, on the vehicle, theirs, brought back, or not wanted any more. */
export const materialStates = ['reserved', 'picked', 'handed-over', 'returned', 'called-off'] as const
export type MaterialState = (typeof materialStates)[number]

/** Still in the stores, and spoken for. */
export const openMaterialStates: readonly MaterialState[] = ['reserved', 'picked']

/** How materials reached the customer. */
export const materialWays = ['collected', 'shipped', 'delivered'] as const
export type MaterialWay = (typeof materialWays)[number]
