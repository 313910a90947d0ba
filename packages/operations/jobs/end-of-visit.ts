/** The end of a visit: minutes are minutes of work, so a change of clocks in between does not make it longer or shorter. */
export function endOf(startsAt: Date, minutes: number): Date {
  return new Date(startsAt.getTime() + minutes * 60_000)
}
