import type { SafeStep } from './visit-stop.ts'

/**
 * Ids of what the procedures ask. Tablets keep answers under them and close-outs carry them, so a name once used is never given another meaning. A
 * quantity names its unit. A test walks every procedure and finds each of them asked.
 */
export const procedureAsks = [
  ...(['stop-case', 'hardness-raw-gpg', 'hardness-outlet-before-gpg', 'hardness-outlet-after-gpg', 'hardness-outlet-gpg'] as const),
  ...(['pressure-psi', 'iron-mg-l', 'chlorine-total-mg-l', 'photographed', 'settings-noted', 'salt-dose-lb', 'hot-side-closed'] as const),
  ...(['bypass-holds', 'pressure-zero', 'unplugged', 'bonding', 'valve-off', 'old-tube-length-in', 'gravel-found', 'old-beads'] as const),
  ...(['old-tube', 'old-bed-depth-in', 'tank-condition', 'new-tube-length-in', 'cap-on', 'gravel-lb', 'resin-ft3', 'cap-out'] as const),
  ...(['seals-renewed', 'air-gap', 'aerators-off', 'strainer-on', 'drain-clear', 'no-leaks', 'sanitised', 'brine-draw'] as const),
  ...(['brine-refill', 'regeneration-started', 'brining-shown', 'in-service', 'settings-entered', 'spent-containers'] as const),
  ...(['floor-clean', 'salt', 'brine-level-in', 'settings-right', 'beads', 'rim-to-bed-in', 'rinsed-clear', 'cleaner-floz'] as const),
  ...(['fault', 'bypassed', 'flushed', 'cause', 'work-done', 'happened', 'water-stopped', 'burst-from', 'no-water-from'] as const),
  ...(['left-as', 'pre-treatment', 'pressure-second', 'valve-inspected', 'overflow-drained', 'old-tank-out'] as const),
] as const
export type ProcedureAskId = (typeof procedureAsks)[number]

/** The tank's size where the crew found another one than is on record; asked beside the kit, at no step. */
export const foundSizes = ['found-diameter-in', 'found-height-in'] as const
export type FoundSize = (typeof foundSizes)[number]

/** Anything a visit's answers may be kept under: the steps' questions, and what the safe ending, the closing form and the kit ask themselves. */
export type VisitAskId = ProcedureAskId | SafeStep | FoundSize

/** Where the beads of the bed that was found are described. */
export const beadAsks = ['old-beads', 'beads'] as const satisfies readonly ProcedureAskId[]

/** The gravel under the bed that came out. */
export const gravelsFound = ['none', 'yes', 'mixed'] as const
export type GravelFound = (typeof gravelsFound)[number]

/** The tank as found, rinsed and looked over with a lamp. */
export const tankConditions = ['sound', 'cracked', 'thread'] as const
export type TankCondition = (typeof tankConditions)[number]

/** Whether the bypass, or else the main, shuts the water off. */
export const shutOffs = ['holds', 'leaks', 'cannot'] as const
export type ShutOff = (typeof shutOffs)[number]

/** Reasons to stop and refer, asked before anything is touched. The first is none of them. */
export const stopCases = ['none', 'lead-line', 'asbestos', 'crawl-space', 'boil-water', 'cracked-tank', 'permit'] as const

/** What an emergency is: it decides what is done first. */
export const emergencies = ['beads', 'burst', 'no-water'] as const
export type EmergencyKind = (typeof emergencies)[number]
