/** Resins: a key for each value of `recordedResinKinds`. */
export const resinKind = {
  'gel-8': '8% crosslink',
  'gel-10': '10% crosslink',
  'fine-mesh': 'fine mesh',
  unknown: 'not known',
} as const
