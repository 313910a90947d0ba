/** Ids of the steps of all procedures: what has a drawing, a brief or a rule of its own goes by them. */
export const procedureSteps = [
  ...(['stop-and-refer', 'check-water', 'record-as-found', 'close-hot-side', 'prove-bypass', 'pressure-off', 'power-off'] as const),
  ...(['bonding-jumper', 'remove-valve', 'drain-tank', 'take-out-media', 'inspect-tank', 'cut-tube', 'cap-tube', 'water-first'] as const),
  ...(['pour-gravel', 'pour-resin', 'cap-out', 'seat-valve', 'reconnect', 'start-in-backwash', 'run-clear', 'leaks-first'] as const),
  ...(['sanitise', 'check-brine', 'full-regeneration', 'test-outlet', 'hand-over', 'clear-away'] as const),
  ...(['test-water', 'check-brine-tank', 'check-settings', 'check-regeneration', 'look-at-beads', 'clean-bed', 'repair'] as const),
  ...(['stop-beads', 'work', 'what-happened', 'stop-water', 'find-water', 'leave-safe', 'set-tank', 'measure-bed'] as const),
] as const
export type ProcedureStepId = (typeof procedureSteps)[number]
