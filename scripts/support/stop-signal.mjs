const stopping = new AbortController()

/** Aborted at the first Ctrl-C, SIGTERM or closed terminal: give it to what must not outlive that. */
export const stopSignal = stopping.signal

/** Resolves to 'stop' at the first Ctrl-C, SIGTERM or closed terminal. A second Ctrl-C ends the command at once. */
export function onStop() {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
      process.on(signal, () => {
        if (stopSignal.aborted && signal === 'SIGINT') process.exit(130)
        stopping.abort()
        resolve('stop')
      })
  })
}
