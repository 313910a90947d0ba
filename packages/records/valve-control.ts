/** What makes a valve regenerate. */
export const valveControls = ['meter', 'timer'] as const
export type ValveControl = (typeof valveControls)[number]

/** What the record of a valve may say of it. */
export const recordedValveControls = [...valveControls, 'unknown'] as const
export type RecordedValveControl = (typeof recordedValveControls)[number]
