import type { BedBeads } from '../hydraulics/bed-expansion.ts'

/**
 * What years of service do to a bed as its pressure sees it: beads break and shed fines, so that the mean size falls by a tenth, and fines and
 * softened beads fill the gaps, so that voids fall from 0.38 to 0.34. By Ergun the drop about doubles. An assumption, no source: a measured
 * drop outranks it.
 */
export const AGED_DIAMETER_SHARE = 0.9
export const AGED_VOIDAGE_LOSS = 0.04

/** The beads of a bed at the end of its service. */
export function agedBeads(beads: BedBeads): BedBeads {
  return { ...beads, diameterM: beads.diameterM * AGED_DIAMETER_SHARE, packedVoidage: beads.packedVoidage - AGED_VOIDAGE_LOSS }
}
