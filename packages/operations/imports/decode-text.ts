import { refuseFile } from './upload-limits.ts'

const starts = (bytes: Uint8Array, ...mark: number[]) => mark.every((byte, index) => bytes[index] === byte)

/** Share of zero bytes at even and at odd places in the first bytes: UTF-16 without a mark shows there. */
function zeroShares(bytes: Uint8Array): [number, number] {
  const head = bytes.subarray(0, 2000)
  let even = 0
  let odd = 0
  for (const [index, byte] of head.entries()) {
    if (byte !== 0) continue
    if (index % 2 === 0) even++
    else odd++
  }
  const half = Math.max(1, head.length / 2)
  return [even / half, odd / half]
}

/** Reads a text file's letters: by its mark, else as UTF-8 where every byte fits, else as Windows-1252, as older spreadsheets write. */
export function decodeText(bytes: Uint8Array): { text: string; sentence: string } {
  if (starts(bytes, 0xef, 0xbb, 0xbf)) return { text: new TextDecoder('utf-8').decode(bytes), sentence: 'Read as UTF-8, as the file says.' }
  if (starts(bytes, 0xff, 0xfe)) return { text: new TextDecoder('utf-16le').decode(bytes), sentence: 'Read as UTF-16, as the file says.' }
  if (starts(bytes, 0xfe, 0xff)) return { text: new TextDecoder('utf-16be').decode(bytes), sentence: 'Read as UTF-16, as the file says.' }
  const [even, odd] = zeroShares(bytes)
  if (odd > 0.4 && even < 0.1) return { text: new TextDecoder('utf-16le').decode(bytes), sentence: 'Read as UTF-16.' }
  if (even > 0.4 && odd < 0.1) return { text: new TextDecoder('utf-16be').decode(bytes), sentence: 'Read as UTF-16.' }
  if (even + odd > 0) throw refuseFile('We can’t read this kind of file. Save it as .xlsx or CSV and import that.')
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), sentence: 'Read as UTF-8.' }
  } catch {
    return {
      text: new TextDecoder('windows-1252').decode(bytes),
      sentence: 'Read as Windows-1252, since it isn’t UTF-8. Check an accented name below.',
    }
  }
}
