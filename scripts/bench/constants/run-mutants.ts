import { type ChildProcess, fork } from 'node:child_process'
import type { Answer, Task } from './mutant-process.ts'

/** Mutants after which a process is replaced: modules once imported are never forgotten. */
const PER_PROCESS = 60
/** A mutant that runs longer than this has been noticed: something does not end, ms. */
const PATIENCE_MS = 20_000

const TIMED_OUT = { killedBy: 'no end', why: 'did not end', passed: 0, ms: {} }

class Runner {
  readonly copy: string
  child: ChildProcess | null = null
  done = 0

  constructor(copy: string) {
    this.copy = copy
  }

  async ready(): Promise<ChildProcess> {
    if (this.child && this.done < PER_PROCESS) return this.child
    this.child?.kill()
    this.done = 0
    const child = fork(new URL('./mutant-process.ts', import.meta.url), [this.copy], {
      execArgv: ['--no-warnings'],
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    })
    this.child = child
    await new Promise((resolve, reject) => {
      child.once('message', resolve)
      child.once('exit', () => reject(new Error('A process of the bench could not start.')))
    })
    return child
  }

  async run(task: Task): Promise<Answer> {
    const child = await this.ready()
    this.done += 1
    return new Promise((resolve) => {
      const end = (answer: Answer, gone: boolean) => {
        clearTimeout(timer)
        child.removeAllListeners('message').removeAllListeners('exit')
        if (gone) {
          child.kill('SIGKILL')
          this.child = null
        }
        resolve(answer)
      }
      const timer = setTimeout(() => end({ id: task.id, ...TIMED_OUT }, true), PATIENCE_MS)
      child.once('message', (answer) => end(answer as Answer, false))
      child.once('exit', () => end({ id: task.id, ...TIMED_OUT, killedBy: 'process ended', why: 'the process ended' }, true))
      child.send(task)
    })
  }

  stop(): void {
    this.child?.kill()
    this.child = null
  }
}

/** Runs tasks in so many processes; `told` hears of each answer. */
export async function runMutants(copy: string, tasks: readonly Task[], jobs: number, told: (answer: Answer) => void): Promise<void> {
  const waiting = [...tasks]
  const work = async () => {
    const runner = new Runner(copy)
    try {
      for (let task = waiting.shift(); task !== undefined; task = waiting.shift()) told(await runner.run(task))
    } finally {
      runner.stop()
    }
  }
  await Promise.all(Array.from({ length: jobs }, work))
}
