let first = true

/** Resolves to 'stop' at the first Ctrl-C, SIGTERM or closed terminal. A second one ends the command at once. */
export function onStop() {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
      process.on(signal, () => {
        if (!first && signal === 'SIGINT') process.exit(130)
        first = false
        resolve('stop')
      })
  })
}
