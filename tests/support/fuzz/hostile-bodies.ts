import type { Chance } from './random.ts'

/** A body by its beginning, what is repeated, and how often: large ones are never held whole. */
export type Body = { head: string; repeat: string; times: number; tail: string }

export const bodyBytes = ({ head, repeat, times, tail }: Body) =>
  Buffer.byteLength(head) + Buffer.byteLength(repeat) * times + Buffer.byteLength(tail)

const KINDS: [head: string, repeat: string, tail: string][] = [
  ['{"json":[', '{},', '{}]}'],
  ['{"json":[', '1,', '1]}'],
  ['{"json":"', 'x', '"}'],
  ['', '[', ''],
  ['', '{"a":', ''],
  ['{"json":{"q":"', '\\u0000', '"}}'],
  ['{"email":"', 'x', '@firm.example","password":"y"}'],
  ['', ' ', ''],
  ['', '\u0000', ''],
  ['window=', 'x', ''],
  ['window=x', '&window=x', ''],
]

/** Between the two, each order of magnitude as often as the next. */
const between = (chance: Chance, least: number, most: number) => least * (most / least) ** chance.next()

const SMALL_BYTES = 100_000
/** Of the bodies: with the six in a hundred requests that bring one, one request in two thousand brings one of the largest. */
const LARGEST_OF_BODIES = 1 / 120
const MIDDLE_OF_BODIES = 1 / 6
/** Of the files, of which three in a hundred requests bring one: one request in two hundred brings a large one. */
const LARGE_OF_FILES = 1 / 6

/** A body of up to `most` bytes: mostly small, so that a run has time for many of every kind; some about the limits, few of the largest. */
export function hostileBody(chance: Chance, most: number): Body {
  const [head, repeat, tail] = chance.one(KINDS)
  const [small, large] = [Math.min(SMALL_BYTES, most), Math.max(SMALL_BYTES, most / 10)]
  const which = chance.next()
  const bytes =
    which < LARGEST_OF_BODIES
      ? between(chance, Math.min(large, most), most)
      : which < LARGEST_OF_BODIES + MIDDLE_OF_BODIES
        ? between(chance, small, Math.min(large, most))
        : between(chance, 100, small)
  return { head, repeat, times: Math.max(1, Math.floor(bytes / Buffer.byteLength(repeat))), tail }
}

const FILES: [head: string, repeat: string, tail: string][] = [
  // one cell of the whole file, stray quotation marks, lines of nothing, ten thousand columns, a wide row far down
  ['Name,Street\n', 'x', ''],
  ['Name,Street\nHanna "Vale,"', 'Weir Road 8,x\n', '"'],
  ['', '\n', ''],
  ['Name', ',', '\nHanna\n'],
  ['Name,Street\n', `${'5'.repeat(5000)},${'7'.repeat(5000)}\n`, ''],
  ['Name,Street,Tank\n', 'Hanna Vale,Weir Road 8,10x54\n', ''],
  ['__proto__,constructor\n', '=cmd(),@x\n', ''],
  ['PK\u0003\u0004', 'x', ''],
  ['%PDF-1.7', 'x', ''],
  ['\ufeff', 'Ä;Ö\t', '\n'],
]

/** A file that is hard to read, of up to `most` bytes; large ones are few. */
export function hostileFile(chance: Chance, most: number): Body {
  const [head, repeat, tail] = chance.one(FILES)
  const bytes = chance.happens(LARGE_OF_FILES) ? between(chance, most / 100, most) : between(chance, 100, Math.max(100, most / 100))
  return { head, repeat, times: Math.max(1, Math.floor(bytes / Buffer.byteLength(repeat))), tail }
}
