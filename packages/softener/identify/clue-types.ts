/** What somebody with a tape and a torch can tell of a tank; null or left out where they cannot. Lengths in inches, volume in ft³. */
export type TankClues = {
  /** Across, with a rule or a tape held against the tank. */
  diameterIn?: number | null
  /** Around the tank, with a tape. */
  circumferenceIn?: number | null
  /** Floor to where the tank ends and the valve begins. */
  heightIn?: number | null
  /** Floor to the top of the valve. */
  heightWithValveIn?: number | null
  /** A size written on the tank or in the notes, diameter and height. */
  writtenDiameterIn?: number | null
  writtenHeightIn?: number | null
  /** Rating on the label. */
  nominalGrains?: number | null
  /** Resin as the label or a service record gives it. */
  resinFt3?: number | null
  /** Depth of the settled resin, seen or probed with the valve off. */
  bedDepthIn?: number | null
  /** The threaded hole at the top, seen with the valve off. */
  openingIn?: number | null
  /** Whether the tank wears a sleeve or jacket that the tape went around. */
  jacket?: boolean | null
}

export type ClueId = keyof TankClues

/** A size a tank may have, and whether it wears a jacket; `listed` is its row in the firm's table, -1 where it has none. */
export type SizeHypothesis = {
  diameterIn: number
  heightIn: number
  jacket: boolean
  listed: number
  resinMinFt3: number
  resinMaxFt3: number
  openingsIn: readonly number[]
  prior: number
}

/** How far a clue may lie from the truth. `slipShare` of all entries are slips that say nothing; `spread` is what a slip may read. */
export type ClueError = {
  readonly sd: number
  /** True where `sd` is a share of the value and the clue is compared by ratio. */
  readonly byRatio: boolean
  readonly slipShare: number
  readonly spread: number
  /** Where it is from: its key among the words. */
  readonly source: 'practice' | 'memory'
}
