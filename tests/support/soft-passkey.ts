import { createHash, generateKeyPairSync, randomBytes, sign } from 'node:crypto'

const HOME = 'http://localhost:3000'
const sha256 = (bytes: Buffer | string) => createHash('sha256').update(bytes).digest()
const text = (value: object) => Buffer.from(JSON.stringify(value))

/** A head of CBOR (RFC 8949, section 3): major type and length, up to two bytes of it. */
const head = (major: number, length: number) =>
  length < 24
    ? Buffer.from([(major << 5) | length])
    : length < 256
      ? Buffer.from([(major << 5) | 24, length])
      : Buffer.from([(major << 5) | 25, length >> 8, length & 255])
const bytesOf = (value: Buffer) => Buffer.concat([head(2, value.length), value])
const textOf = (value: string) => Buffer.concat([head(3, value.length), Buffer.from(value)])
const numberOf = (value: number) => (value < 0 ? head(1, -1 - value) : head(0, value))
const mapOf = (...entries: [Buffer, Buffer][]) => Buffer.concat([head(5, entries.length), ...entries.flat()])

/**
 * An authenticator in a few lines (W3C Web Authentication Level 3: client data 5.8.1, authenticator data 6.1, attested credential 6.5.1, attestation "none" 8.7;
 * its key by RFC 9053, section 7.1.1): what a device answers when it is asked to make a passkey, or to sign in with it. `verified`: it asked its owner for a PIN.
 */
export function softPasskey() {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
  const { x = '', y = '' } = publicKey.export({ format: 'jwk' })
  const id = randomBytes(32)
  const cose = mapOf(
    [numberOf(1), numberOf(2)],
    [numberOf(3), numberOf(-7)],
    [numberOf(-1), numberOf(1)],
    [numberOf(-2), bytesOf(Buffer.from(x, 'base64url'))],
    [numberOf(-3), bytesOf(Buffer.from(y, 'base64url'))],
  )
  const clientData = (type: string, challenge: string, origin: string) => text({ type, challenge, origin, crossOrigin: false })
  /** Flags: present 1, verified 4, a credential attached 64. */
  const data = (flags: number, rpId: string, more = Buffer.alloc(0)) =>
    Buffer.concat([sha256(rpId), Buffer.from([flags]), Buffer.alloc(4), more])
  const answer = (response: Record<string, Buffer | string[]>) => ({
    id: id.toString('base64url'),
    rawId: id.toString('base64url'),
    type: 'public-key',
    clientExtensionResults: {},
    response: Object.fromEntries(
      Object.entries(response).map(([name, value]) => [name, Buffer.isBuffer(value) ? value.toString('base64url') : value]),
    ),
  })
  type How = { verified?: boolean; origin?: string; rpId?: string }
  return {
    make(challenge: string, { verified = true, origin = HOME, rpId = 'localhost' }: How = {}) {
      const attached = Buffer.concat([Buffer.alloc(16), Buffer.from([0, id.length]), id, cose])
      const authData = data(verified ? 69 : 65, rpId, attached)
      const attestationObject = mapOf(
        [textOf('fmt'), textOf('none')],
        [textOf('attStmt'), mapOf()],
        [textOf('authData'), bytesOf(authData)],
      )
      return answer({ clientDataJSON: clientData('webauthn.create', challenge, origin), attestationObject, transports: ['internal'] })
    },
    use(challenge: string, { verified = true, origin = HOME, rpId = 'localhost' }: How = {}) {
      const clientDataJSON = clientData('webauthn.get', challenge, origin)
      const authenticatorData = data(verified ? 5 : 1, rpId)
      const signature = sign('sha256', Buffer.concat([authenticatorData, sha256(clientDataJSON)]), privateKey)
      return answer({ clientDataJSON, authenticatorData, signature })
    },
  }
}
