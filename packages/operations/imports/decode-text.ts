import { type FileEncoding, refuseFile } from './upload-limits.ts'

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

const decoded = (bytes: Uint8Array, encoding: FileEncoding, sentence: string) => ({
  text: new TextDecoder(encoding, { fatal: encoding === 'utf-8' }).decode(bytes),
  ...{ sentence, encoding },
})

/** Reads a text file's letters: by its mark, else as UTF-8 where every byte fits, else as Windows-1252, as older spreadsheets write. */
export function decodeText(bytes: Uint8Array): { text: string; sentence: string; encoding: FileEncoding } {
  if (starts(bytes, 0xef, 0xbb, 0xbf))
    return { text: new TextDecoder('utf-8').decode(bytes), sentence: 'Read as UTF-8, as the file says.', encoding: 'utf-8' }
  if (starts(bytes, 0xff, 0xfe)) return decoded(bytes, 'utf-16le', 'Read as UTF-16, as the file says.')
  if (starts(bytes, 0xfe, 0xff)) return decoded(bytes, 'utf-16be', 'Read as UTF-16, as the file says.')
  const [even, odd] = zeroShares(bytes)
  if (odd > 0.4 && even < 0.1) return decoded(bytes, 'utf-16le', 'Read as UTF-16.')
  if (even > 0.4 && odd < 0.1) return decoded(bytes, 'utf-16be', 'Read as UTF-16.')
  if (even + odd > 0) throw refuseFile('We can’t read this kind of file. Save it as .xlsx or CSV and import that.')
  try {
    return decoded(bytes, 'utf-8', 'Read as UTF-8.')
  } catch {
    return decoded(bytes, 'windows-1252', 'Read as Windows-1252, since it isn’t UTF-8. Check an accented name below.')
  }
}
