/**
 * Why the office reads of something that a tablet sent: `refused` could not be taken in and waits with its content, `unreadable` is of a form that this server
 * doesn't know, `landed` was taken in though the office had changed the visit, `lost` are numbers that never came.
 */
export const setAsideKinds = ['refused', 'unreadable', 'landed', 'lost'] as const
export type SetAsideKind = (typeof setAsideKinds)[number]

export const setAsideKindWords: Record<SetAsideKind, string> = {
  refused: 'Couldn’t be taken in',
  unreadable: 'Couldn’t be read',
  landed: 'Taken in',
  lost: 'Never arrived',
}
