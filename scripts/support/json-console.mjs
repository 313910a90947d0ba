// Loaded into web and worker where they write a log file: what libraries print by console becomes a JSON line like the app's own.
import { format, stripVTControlCharacters } from 'node:util'

process.stdout.on('error', () => {}) // a full disk takes no lines, and is no reason to end

for (const [method, level] of Object.entries({ debug: 'debug', log: 'info', info: 'info', warn: 'warn', error: 'error' }))
  console[method] = (...words) => {
    const msg = stripVTControlCharacters(format(...words)).trim()
    if (msg) process.stdout.write(`${JSON.stringify({ level, time: new Date().toISOString(), msg })}\n`)
  }
