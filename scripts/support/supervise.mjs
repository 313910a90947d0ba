// Keeps a process up: one that ends by itself is begun again, later each time, and given up only when it cannot stay up at all.
import { setTimeout as sleep } from 'node:timers/promises'

const firstWaitMs = 250
const longestWaitMs = 15_000
const steadyMs = 10_000
const mostInARow = 20

/** How long to wait before the next try after so many failures in a row: doubled each time, up to a quarter of a minute. */
export const waitMs = (failures) => Math.min(longestWaitMs, firstWaitMs * 2 ** (failures - 1))

/** A process that could not even be begun (its log cannot be opened on a full disk, say) is one that ended. */
function beginOrSay(begin) {
  try {
    return begin()
  } catch (error) {
    return { ended: Promise.resolve(`could not be started: ${error.message}`), stop: async () => {} }
  }
}

/**
 * Begins a process by `begin()`, which answers { ended, stop }, `ended` resolving to a phrase that says how it ended. Once `settled` was called, it is
 * begun again whenever it ends, and `say` told of it; until then, and after 20 ends in a row that came within ten seconds each, `failed` resolves to a sentence.
 */
export function keepUp(name, begin, say, wait = waitMs) {
  let current
  let settled = false
  let stopping = false
  const stopped = new AbortController()

  const watch = async () => {
    for (let failures = 0; ; ) {
      const begun = performance.now()
      current = beginOrSay(begin)
      const how = await current.ended
      if (stopping) return undefined
      const sentence = `The ${name} ${how}`
      if (!settled) return sentence
      failures = performance.now() - begun >= steadyMs ? 1 : failures + 1
      if (failures >= mostInARow) return `${sentence}\nThat was the ${failures}th time in a row, so it is not started again.`
      say(`${sentence.split('\n')[0]}; starting it again${failures > 1 ? ` (try ${failures})` : ''}`)
      await sleep(wait(failures), undefined, { signal: stopped.signal }).catch(() => {})
      if (stopping) return undefined
    }
  }
  const watched = watch()
  return {
    failed: new Promise((resolve) => void watched.then((sentence) => sentence && resolve(sentence))),
    settled: () => {
      settled = true
    },
    pid: () => current.child?.pid,
    stop: async () => {
      stopping = true
      stopped.abort()
      await current.stop()
      await watched
    },
  }
}
