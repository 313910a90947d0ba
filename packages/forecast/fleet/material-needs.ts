/** What one rebed takes. */
export interface RebedKit {
  readonly resinFt3: number
  readonly gravelLb: number
  readonly crewHours: number
}

/** One bed's chance of failing in each month, or 1 in the month it is planned for, with what its rebed takes. */
export interface NeedingBed {
  readonly chances: ArrayLike<number>
  readonly kit: RebedKit
}

export interface MonthNeed {
  readonly month: number
  readonly rebeds: number
  readonly resinFt3: number
  readonly gravelLb: number
  readonly crewHours: number
  /** Standard deviation of the resin by chance alone; what all beds share (doubt about the parameters) comes on top. */
  readonly resinSdFt3: number
}

/**
 * Resin, gravel and crew-hours to expect in each month, since each bed brings its own kit: expected amounts, exact. Refuses nothing; a kit amount that is no
 * number or negative is a defect upstream and throws RangeError.
 */
export function materialNeeds(beds: Iterable<NeedingBed>, months: number): MonthNeed[] {
  const sums = Array.from({ length: months }, () => ({ rebeds: 0, resinFt3: 0, gravelLb: 0, crewHours: 0, variance: 0 }))
  for (const { chances, kit } of beds) {
    for (const amount of [kit.resinFt3, kit.gravelLb, kit.crewHours])
      if (!(amount >= 0 && amount < Number.POSITIVE_INFINITY))
        throw new RangeError(`A kit of ${amount} can’t be added up; amounts are zero or more.`)
    for (let m = 0; m < months; m++) {
      const chance = chances[m] ?? 0
      const sum = sums[m] as (typeof sums)[number]
      sum.rebeds += chance
      sum.resinFt3 += chance * kit.resinFt3
      sum.gravelLb += chance * kit.gravelLb
      sum.crewHours += chance * kit.crewHours
      sum.variance += chance * (1 - chance) * kit.resinFt3 ** 2
    }
  }
  return sums.map(({ variance, ...sum }, month) => ({ month, ...sum, resinSdFt3: Math.sqrt(Math.max(0, variance)) }))
}
