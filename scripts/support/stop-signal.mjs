const stopping = new AbortController()

/** Aborted at the first Ctrl-C, SIGTERM or closed terminal: give it to what must not outlive that. */
export const stopSignal = stopping.signal

/** One Ctrl-C may come several times: from the terminal, and from npm and our own parent, who pass it on. */
const oneCtrlCMs = 500

/** Resolves to 'stop' at the first Ctrl-C, SIGTERM or closed terminal. A second Ctrl-C ends the command at once. */
export function onStop() {
  let first
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
      process.on(signal, () => {
        first ??= performance.now()
        if (signal === 'SIGINT' && performance.now() - first > oneCtrlCMs) process.exit(130)
        stopping.abort()
        resolve('stop')
      })
  })
}
