/** A label that would like to stand with its middle at `at` and takes `size` along the axis. */
export type WantedLabel = { at: number; size: number }

/**
 * Places labels along one axis so that none overlaps another, each as near to where it wants to stand as the others allow (least squares).
 * Returns the middles in the order given. Labels keep their order along the axis; equal wishes keep the order given. They are held between
 * `from` and `until` when they fit there; when they don't, they run past `until` rather than overlap.
 */
export function layoutLabels(labels: readonly WantedLabel[], gap: number, from = -Infinity, until = Infinity): number[] {
  const order = labels.map((_, i) => i).sort((a, b) => (labels[a]?.at ?? 0) - (labels[b]?.at ?? 0) || a - b)
  // Take each label's room off what stands before it: "no overlap" then reads "never decreasing", which pooling neighbours solves exactly.
  const before: number[] = []
  let room = 0
  for (const i of order) {
    before.push(room + (labels[i]?.size ?? 0) / 2)
    room += (labels[i]?.size ?? 0) + gap
  }
  const blocks: { sum: number; count: number }[] = []
  order.forEach((i, k) => {
    let block = { sum: (labels[i]?.at ?? 0) - (before[k] ?? 0), count: 1 }
    for (let last = blocks.at(-1); last && last.sum / last.count > block.sum / block.count; last = blocks.at(-1)) {
      blocks.pop()
      block = { sum: last.sum + block.sum, count: last.count + block.count }
    }
    blocks.push(block)
  })
  const highest = Math.max(from, until - (room - gap))
  const placed = new Array<number>(labels.length).fill(0)
  let k = 0
  for (const block of blocks) {
    const shift = Math.max(from, Math.min(highest, block.sum / block.count))
    for (let n = 0; n < block.count; n++, k++) placed[order[k] ?? 0] = shift + (before[k] ?? 0)
  }
  return placed
}
