import { type ChildProcess, type ForkOptions, fork } from 'node:child_process'
import { createRequire } from 'node:module'
import path from 'node:path'
import { ASIDE_ENV, type AsideMessage } from './answer-aside.ts'
import { inTurn } from './aside-turns.ts'

/** A calculation in a process of its own, and what it may take. */
export type Aside = {
  /** The module that answers by `answerAside`, as other packages import it: `@almanac/operations/imports/read-file-aside`. */
  module: string
  /** Whose work it is: when several wait, firms take turns. */
  companyId: string
  seconds: number
  memoryMb: number
}

/** A calculation that was stopped, for it reached a limit. */
export class AsideOverrun extends Error {
  readonly limit: 'time' | 'memory'

  constructor(limit: 'time' | 'memory', { module, seconds, memoryMb }: Aside) {
    super(`${module} was stopped: it took more than ${limit === 'time' ? `${seconds} seconds` : `${memoryMb} MB of memory`}.`)
    this.name = 'AsideOverrun'
    this.limit = limit
  }
}

/**
 * A process aside knows no setting and no secret; what it reads may have been made to do harm. The folder of compiled code spares it most of half a second.
 */
const KNOWN = ['PATH', 'SystemRoot', 'TZ', 'LANG', 'LC_ALL', 'NODE_ENV', 'NODE_COMPILE_CACHE']
const WORDS_KEPT = 2000

/** The built web server brings its processes bundled beside it; everything else runs them from their source. */
function programOf(module: string): string {
  const bundled = process.env.ASIDE_FOLDER
  if (bundled) return path.join(process.cwd(), bundled, `${module.split('/').at(-1)}.mjs`)
  return createRequire(path.join(process.cwd(), 'package.json')).resolve(module)
}

/**
 * Has a module work something out in a process of its own and answers what it returned: long or untrusted work holds up nothing else here, and ends when it
 * takes too much time or memory. Input and answer are copied: plain data only. `onPiece` takes what an async generator yields, as it comes.
 *
 * @throws AsideOverrun at a limit; an error in the work is this call's error
 */
export function runInWorkerThread<O>(aside: Aside, input: unknown, onPiece: (piece: unknown) => void = () => {}): Promise<O> {
  return inTurn(aside.module, aside.companyId, () => oneProcess<O>(aside, input, onPiece))
}

function oneProcess<O>(aside: Aside, input: unknown, onPiece: (piece: unknown) => void): Promise<O> {
  const { seconds, memoryMb } = aside
  const known = KNOWN.flatMap((name) => (process.env[name] === undefined ? [] : [[name, process.env[name]]]))
  return new Promise<O>((resolve, reject) => {
    const options: ForkOptions = {
      env: { ...Object.fromEntries(known), [ASIDE_ENV]: JSON.stringify({ seconds, memoryMb }) },
      execArgv: [`--max-old-space-size=${memoryMb}`],
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    }
    // Not a plain call: the web's compiler would look for the program while it builds, and it is made only afterwards.
    const child: ChildProcess = Reflect.apply(fork, undefined, [programOf(aside.module), [], options])
    let words = ''
    child.stderr?.setEncoding('utf8').on('data', (some: string) => {
      words = (words + some).slice(0, WORDS_KEPT)
    })
    const end = (settle: () => void) => {
      clearTimeout(clock)
      settle()
      child.kill('SIGKILL')
    }
    const clock = setTimeout(() => end(() => reject(new AsideOverrun('time', aside))), seconds * 1000)
    child.on('message', (message: AsideMessage) => {
      if ('piece' in message) onPiece(message.piece)
      else if ('answer' in message) end(() => resolve(message.answer as O))
      else end(() => reject(Object.assign(new Error(message.failure.message), { stack: message.failure.stack })))
    })
    child.once('error', (error) => end(() => reject(error)))
    child.once('exit', (code, signal) => {
      // What ends it by a signal, if not the clock above: its own watch, or the runtime at its heap's limit.
      const isMemory = signal !== null || code === 134
      end(() =>
        reject(isMemory ? new AsideOverrun('memory', aside) : new Error(`${aside.module} ended without an answer (${code}). ${words}`)),
      )
    })
    child.send(input as object, (error) => {
      if (error) end(() => reject(error))
    })
  })
}
