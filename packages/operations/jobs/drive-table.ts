import type { Board } from '@almanac/dispatch/propose/board'
import { isPoint } from '@almanac/dispatch/travel/point'
import { travelTable } from '@almanac/dispatch/travel/travel-table'
import type { BoardDraft } from './read-board.ts'
import type { TravelDesk } from './travel-desk.ts'
import { serverLegs } from './travel-server.ts'

/** A board with its drives: by the travel server where it knows the roads, else from coordinates. Outside any transaction. */
export async function withDrives({ board, places }: BoardDraft, desk: TravelDesk): Promise<Board> {
  const known = places.flatMap(({ at }) => (isPoint(at) ? [at] : []))
  const server = await serverLegs(known.flatMap((from) => known.map((to) => ({ from, to }))))
  return { ...board, travel: travelTable(places, { calibration: desk.calibration, server }), rush: desk.calibration.rush }
}
