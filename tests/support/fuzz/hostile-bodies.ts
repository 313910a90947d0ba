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

/** A body of up to `most` bytes, each order of magnitude as often as the next. */
export function hostileBody(chance: Chance, most: number): Body {
  const [head, repeat, tail] = chance.one(KINDS)
  const bytes = 10 ** (2 + chance.next() * (Math.log10(most) - 2))
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

/** A file that is hard to read, of up to `most` bytes. */
export function hostileFile(chance: Chance, most: number): Body {
  const [head, repeat, tail] = chance.one(FILES)
  const bytes = 10 ** (2 + chance.next() * (Math.log10(most) - 2))
  return { head, repeat, times: Math.max(1, Math.floor(bytes / Buffer.byteLength(repeat))), tail }
}
