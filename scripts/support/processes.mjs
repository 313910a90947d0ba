// Web and worker as child processes: stopped in order by the command that began them, and by themselves if it is killed.
import { spawn } from 'node:child_process'
import path from 'node:path'
import { root } from './paths.mjs'

const guard = path.join(root, 'scripts/support/end-with-parent.mjs')
const jsonConsole = path.join(root, 'scripts/support/json-console.mjs')
const graceSeconds = 10

/**
 * Starts `node <args>`; resolves at once to { name, child, ended, stop }.
 * `ended` resolves to a phrase that says how it ended; `stop` asks it to end, and insists after a grace period.
 */
export function startNode(name, args, { env, cwd = root, output = 'inherit' }) {
  const child = spawn(process.execPath, ['--import', guard, ...(output === 'inherit' ? [] : ['--import', jsonConsole]), ...args], {
    cwd,
    env: { ...process.env, ...env },
    stdio: ['ignore', output, output, 'ipc'],
    // A group of its own: a Ctrl-C in the terminal reaches only the command, which then stops its children in order.
    detached: process.platform !== 'win32',
    windowsHide: true,
  })
  const ended = new Promise((resolve) => {
    child.once('error', (error) => resolve(`could not be started: ${error.message}`))
    child.once('exit', (code, signal) => resolve(signal ? `was ended by ${signal}` : `ended with code ${code}`))
  })
  const running = () => child.exitCode === null && child.signalCode === null
  const stop = async () => {
    if (!running()) return
    child.kill('SIGTERM')
    const insist = setTimeout(() => child.kill('SIGKILL'), graceSeconds * 1000)
    await ended
    clearTimeout(insist)
  }
  return { name, child, ended, running, stop }
}
