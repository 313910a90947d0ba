/** What a procedure may demand: action and entity. Server and browser share the list, so that a misspelt one compiles in neither. */
export const permissions = [
  'read:due',
  'judge:forecast',
  'read:site',
  'change:site',
  'read:water',
  'change:water',
  'run:import',
  'propose:job',
  'read:job',
  'book:visit',
  'record:call',
  'manage:crews',
  'read:own-work',
  'close:visit',
  'read:reminder',
  'decide:reminder',
  'send:message',
  'read:stores',
  'change:stores',
  'manage:company',
] as const
export type Permission = (typeof permissions)[number]
