import type { Board, BoardJob, Sheet } from '../propose/board.ts'

/** A stranded job: what was promised to its customer becomes a window of that day that any crew may keep; leaving it out costs what taking a visit off does. */
export function freePromise(job: BoardJob, sheet: Pick<Sheet, 'date'>, { prices }: Pick<Board, 'prices'>): BoardJob {
  const { promised, ...rest } = job
  return {
    ...rest,
    leaveOutPrice: prices.takeOff,
    ...(promised === undefined ? {} : { windows: [{ date: sheet.date, from: promised.from, to: promised.to }] }),
  }
}
