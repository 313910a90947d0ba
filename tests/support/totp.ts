import { createHmac } from 'node:crypto'

const BASE32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'

/** The bytes of a base32 text: RFC 4648, 6. */
function bytesOf(base32: string): Buffer {
  const bits = [...base32.replaceAll('=', '')].map((sign) => BASE32.indexOf(sign).toString(2).padStart(5, '0')).join('')
  return Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)))
}

/** The code that an authenticator app shows at an instant, by RFC 6238 (30 s, SHA-1) and RFC 4226, 5.3. `secret` in base32. */
export function totpCode(secret: string, atMs: number, digits = 6): string {
  const counter = Buffer.alloc(8)
  counter.writeBigUInt64BE(BigInt(Math.floor(atMs / 30_000)))
  const hash = createHmac('sha1', bytesOf(secret)).update(counter).digest()
  const offset = (hash.at(-1) ?? 0) & 15
  return String((hash.readUInt32BE(offset) & 0x7fffffff) % 10 ** digits).padStart(digits, '0')
}
