import { createServer } from 'node:net'

const listen = (port, host) =>
  new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(port, host, () => {
      const { port: given } = server.address()
      server.close(() => resolve(given))
    })
  })

/** A port on the loopback interface that nobody listens on now. */
export const freePort = () => listen(0, '127.0.0.1')

/** Whether another program listens on `port`. */
export async function portInUse(port, host) {
  try {
    await listen(port, host)
    return false
  } catch (error) {
    if (error.code === 'EADDRINUSE') return true
    throw error
  }
}
