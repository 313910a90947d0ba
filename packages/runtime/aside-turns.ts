type Waiting = { companyId: string; begin: () => void }
type Lane = { running: string[]; waiting: Waiting[]; lastServed: Map<string, number> }

/** Processes of one kind at once, and of one firm: a second firm need not wait for the first one's work, and nobody fills a small machine. */
const MOST_AT_ONCE = 2

const lanes = new Map<string, Lane>()
let turn = 0

/** How many pieces of a firm's work of this kind run or wait. */
export function inLane(kind: string, companyId: string): number {
  const lane = lanes.get(kind)
  if (!lane) return 0
  return [...lane.running, ...lane.waiting.map((one) => one.companyId)].filter((one) => one === companyId).length
}

/** Begins what may begin: of firms with nothing under way the one whose last turn lies longest back. */
function beginNext(lane: Lane): void {
  if (lane.running.length >= MOST_AT_ONCE) return
  const free = lane.waiting.filter(({ companyId }) => !lane.running.includes(companyId))
  const lastTurn = ({ companyId }: Waiting) => lane.lastServed.get(companyId) ?? 0
  const [one] = free.toSorted((a, b) => lastTurn(a) - lastTurn(b))
  if (!one) return
  lane.waiting.splice(lane.waiting.indexOf(one), 1)
  lane.running.push(one.companyId)
  lane.lastServed.set(one.companyId, ++turn)
  one.begin()
}

/** Runs work when its turn comes: at most two of a kind in this process, one of a firm, and firms in turn, however much one of them asks for. */
export async function inTurn<T>(kind: string, companyId: string, work: () => Promise<T>): Promise<T> {
  const lane: Lane = lanes.get(kind) ?? { running: [], waiting: [], lastServed: new Map() }
  lanes.set(kind, lane)
  await new Promise<void>((resolve) => {
    lane.waiting.push({ companyId, begin: resolve })
    beginNext(lane)
  })
  try {
    return await work()
  } finally {
    lane.running.splice(lane.running.indexOf(companyId), 1)
    beginNext(lane)
    if (lane.running.length === 0) lanes.delete(kind)
  }
}
