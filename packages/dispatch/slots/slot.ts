/** One place for a job: before the `position`-th visit of a sheet (0: first). Prices in minor units; minutes are what this job adds to the sheet's day. */
export interface Slot {
  readonly sheetId: string
  readonly date: string
  readonly position: number
  readonly startMinute: number
  readonly endMinute: number
  /** Null when the drive is unknown. */
  readonly addedDriveMinutes: number | null
  readonly addedMiles: number | null
  readonly addedWaitMinutes: number
  readonly addedOvertimeMinutes: number
  /** Minutes of the sheet's time in hand that it takes. */
  readonly addedInHandMinutes: number
  readonly lateDays: number
  /** How long after the time given the work could still begin within the customer's window. */
  readonly windowSlackMinutes: number
  /** Fullest moment of the vehicle's day with the job, as a part of its capacity. */
  readonly fullest: number
  readonly parts: {
    readonly driving: number
    readonly overtime: number
    /** Of a day that would end late too often by it. */
    readonly reserve: number
    readonly lateness: number
    readonly sending: number
    readonly moving: number
  }
  readonly price: number
  readonly sentence: string
}
