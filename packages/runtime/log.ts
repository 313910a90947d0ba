import pino, { type Logger } from 'pino'

export type { Logger }

let root: Logger | undefined

/** Errors of the language and of the system name no person; a database's or a parser's may quote what was typed. */
const tellsNobody = (error: Error) =>
  ['TypeError', 'RangeError', 'ReferenceError'].includes(error.name) ||
  /^E[A-Z]+$/.test(String((error as NodeJS.ErrnoException).code ?? ''))

/** An error as the log keeps it: its kind and where it came from. pino writes an error under this name as {}. */
export function loggedError(error: unknown): unknown {
  if (!(error instanceof Error)) return error
  const { name, cause } = error
  const code = (error as NodeJS.ErrnoException).code
  const frames = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line))
  return {
    ...{ name, code, message: tellsNobody(error) ? error.message : undefined, at: frames.map((line) => line.trim().slice(3)) },
    cause: cause === undefined ? undefined : loggedError(cause),
  }
}

/** The structured log: one JSON line an event on standard output. No personal data, no bodies. */
export function log(): Logger {
  root ??= pino({
    level: process.env.LOG_LEVEL ?? 'info',
    base: undefined,
    serializers: { error: loggedError },
    formatters: { level: (label) => ({ level: label }) },
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: { paths: ['password', 'token', 'cookie', 'authorization', '*.password', '*.token'], censor: '[kept out]' },
  })
  return root
}
