/** A span of time in whole ticks from the beginning of the horizon. A tick is any one unit; the firm's days use seconds. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** What goes on the vehicle: volume in ft³ and weight in lb, both 0 or more. */
export interface Load {
  readonly ft3: number
  readonly lb: number
}

/** A visit that has been promised: it stays with this crew-day and begins within these times. */
export interface Promised {
  /** Index into `Problem.crewDays`. */
  readonly crewDay: number
  readonly start: Span
}

/** One visit to be planned. */
export interface RoutedVisit {
  readonly id: string
  /** Row of the travel tables. */
  readonly place: number
  readonly serviceTicks: number
  /** What it really takes, where that varies: its mean in ticks and its variance in ticks². Absent: `serviceTicks`, always. */
  readonly lasts?: { readonly mean: number; readonly variance: number }
  /** When the work may begin; several spans, on one day or several. Empty: nowhere, the visit cannot be planned. */
  readonly windows: readonly Span[]
  /** Carried from the start of the crew-day to the site (resin), and from the site to its end (spent resin). */
  readonly out: Load
  readonly back: Load
  /** Names that must all be among the crew-day's skills: licences, a valve make, a site's own demands. */
  readonly skills: readonly string[]
  /** How many people must be there at once. */
  readonly people: number
  /** Crew-days that may do it, as indexes; absent: any that fit. */
  readonly allowedCrewDays?: readonly number[]
  /** Not on a day before this one. */
  readonly releaseDay?: number
  /** Each day after this one costs `latePricePerDay`. */
  readonly dueDay?: number
  readonly latePricePerDay?: number
  /** Price of leaving it out of the horizon. Absent: it must be planned. */
  readonly leaveOutPrice?: number
  /** Broken preferences: price of giving it to a crew-day, beside all others. */
  readonly dislikes?: readonly { readonly crewDay: number; readonly price: number }[]
  readonly promised?: Promised
  /** Stands on this crew-day at a time that its customer may know: beginning at another there costs `price`. */
  readonly stands?: { readonly crewDay: number; readonly start: number; readonly price: number }
}

/** A pause that must begin within `start`, between two visits, never within one. It is owed unless the crew-day is over by `start.to`. */
export interface Pause {
  readonly start: Span
  readonly ticks: number
}

/** While a drive begins within this span, it takes `factor` times the table's duration, rounded to whole ticks. */
export interface Rush extends Span {
  readonly factor: number
}

/**
 * A day that shall be over by a moment though lengths and drives vary: `deviations` standard deviations beyond its mean end, each tick past `by` costs `price`.
 * A drive varies by `driveSpread` of itself.
 */
export interface Reserve {
  readonly by: number
  readonly deviations: number
  readonly driveSpread: number
  readonly price: number
}

/** One crew on one day, with its vehicle. */
export interface CrewDay {
  readonly id: string
  /** Whole number; only its order and its differences matter. */
  readonly day: number
  readonly startPlace: number
  readonly endPlace: number
  /** Work may begin; overtime begins; everyone must be back. */
  readonly shift: Span
  readonly latestEnd: number
  readonly pauses: readonly Pause[]
  readonly rush?: readonly Rush[]
  readonly capacity: Load
  readonly skills: readonly string[]
  readonly people: number
  /** Price of one unit of distance, of one tick of driving (all people in the vehicle together) and of one tick past `shift.to`. */
  readonly distancePrice: number
  readonly drivePrice: number
  readonly overtimePrice: number
  /** Price of sending the crew at all. */
  readonly sendPrice: number
  /** Work and driving beyond this many ticks cost `unfairPrice` a tick. Absent: no share. */
  readonly fairShareTicks?: number
  readonly unfairPrice?: number
  /** Absent: the day is planned as if everything lasted as long as it is told. */
  readonly reserve?: Reserve
}

/** Everything the planner is told. Prices are in one unit of the caller's choice (the firm: minor units of money). */
export interface RoutingProblem {
  readonly visits: readonly RoutedVisit[]
  readonly crewDays: readonly CrewDay[]
  readonly places: number
  /** Row-major `places` × `places`: whole ticks, and any unit of distance; from the row's place to the column's. */
  readonly durations: ArrayLike<number>
  readonly distances: ArrayLike<number>
}
