import pino, { type Logger } from 'pino'

export type { Logger }

let root: Logger | undefined

/** The structured log: one JSON line an event on standard output. No personal data, no bodies. */
export function log(): Logger {
  root ??= pino({
    level: process.env.LOG_LEVEL ?? 'info',
    base: undefined,
    formatters: { level: (label) => ({ level: label }) },
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: { paths: ['password', 'token', 'cookie', 'authorization', '*.password', '*.token'], censor: '[kept out]' },
  })
  return root
}
