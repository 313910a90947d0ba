import { answerAside } from '@almanac/runtime/answer-aside'

/** Work as a hostile input makes it: never done, growing without end, failing, or in pieces. */
async function* work(
  input: 'for ever' | 'heap' | 'buffers' | 'throw' | 'die' | 'pieces' | 'environment',
): AsyncGenerator<unknown, unknown> {
  if (input === 'for ever') for (;;);
  if (input === 'heap') for (const kept: unknown[] = []; ; ) kept.push({ at: kept.length })
  if (input === 'buffers') for (const kept: Buffer[] = []; ; ) kept.push(Buffer.alloc(16 * 1024 * 1024, 1))
  if (input === 'throw') throw new Error('one and one are three')
  if (input === 'die') process.exit(3)
  if (input === 'environment') return Object.keys(process.env).sort()
  yield [1, 2]
  yield [3]
  return new Map([['sum', 6]])
}

answerAside(work)
