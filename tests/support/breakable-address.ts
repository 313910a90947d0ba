import { once } from 'node:events'
import net from 'node:net'

/** What stands behind the address: the database, one that is just starting, or nobody at all. */
export type Behind = 'database' | 'starting' | 'nobody'

/** PostgreSQL's ErrorResponse (its protocol 3.0, "Message Formats"), as a server sends it while it recovers. */
function refusal(code: string, message: string): Buffer {
  const fields = Buffer.from(`SFATAL\0VFATAL\0C${code}\0M${message}\0\0`)
  const head = Buffer.alloc(5)
  head.write('E')
  head.writeInt32BE(fields.length + 4, 1)
  return Buffer.concat([head, fields])
}

/** An address in front of a database, to be broken: connections through it can be cut, and new ones refused. `onOpen` is told how many there have been. */
export async function breakableAddress(url: string, onOpen: (count: number) => void = () => {}) {
  const target = new URL(url)
  const open = new Set<net.Socket>()
  let behind: Behind = 'database'
  let count = 0
  let untilCut = 0
  const cut = () => {
    for (const socket of open) socket.destroy()
  }
  /** Of what goes either way, the last piece before a cut is lost with the connection. */
  const passing = () => {
    if (untilCut > 0 && --untilCut === 0) cut()
  }
  const server = net.createServer((socket) => {
    socket.on('error', () => {})
    if (behind === 'starting') return void socket.once('data', () => socket.end(refusal('57P03', 'the database system is starting up')))
    const onward = net.connect(Number(target.port), target.hostname)
    for (const [one, other] of [
      [socket, onward],
      [onward, socket],
    ] as const) {
      open.add(one)
      one.on('error', () => {})
      one.on('data', passing)
      one.on('close', () => {
        open.delete(one)
        other.destroy()
      })
      one.pipe(other)
    }
    onOpen(++count)
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as net.AddressInfo
  /** Cuts all connections at the nth piece of what goes either way from now on, and answers whether it has come to that. */
  const cutAt = (pieces: number) => {
    untilCut = pieces
    return () => untilCut === 0
  }
  /** The same database, by the address that can be broken. */
  const through = (other: string) => Object.assign(new URL(other), { port: String(port) }).href
  const set = async (next: Behind) => {
    behind = next
    untilCut = 0
    if (next !== 'database') cut()
    if (next === 'nobody' && server.listening) await new Promise((done) => server.close(done))
    if (next !== 'nobody' && !server.listening) {
      server.listen(port, '127.0.0.1')
      await once(server, 'listening')
    }
  }
  return { through, cutAt, set, close: () => set('nobody') }
}
