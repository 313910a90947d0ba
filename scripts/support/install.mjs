// Installs the packages when they are missing or older than the lock file. Plain Node: nothing is installed yet.
import { spawn } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { freeMb, needDiskSpace } from './disk-space.mjs'
import { withLock } from './file-lock.mjs'
import { cloneDir, root } from './paths.mjs'
import { PlainError, say } from './say.mjs'

const stamp = path.join(root, 'node_modules/.package-lock.json') // npm writes it last
const lockFile = path.join(root, 'package-lock.json')
const neededMb = 1800 // packages unpacked and npm's cache of them

const isFresh = () => fs.existsSync(stamp) && fs.statSync(stamp).mtimeMs >= fs.statSync(lockFile).mtimeMs

/** npm as this very Node would run it: by its own script when npm started us, else by name. */
function npm(args) {
  const script = process.env.npm_execpath
  const byScript = script && /npm-cli\.js$/.test(script)
  const shell = !byScript && process.platform === 'win32'
  return spawn(byScript ? process.execPath : 'npm', byScript ? [script, ...args] : args, {
    cwd: root,
    stdio: ['ignore', 2, 'pipe'], // its words are no answer of the command that needs the packages
    shell,
  })
}

function whyItFailed(output, status) {
  if (/ENOSPC|no space left/i.test(output) || freeMb(root) < 20)
    return 'The disk is full: the packages could not be installed. Free some space and run the same command again.'
  const unreachable = output.match(/ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|ERR_SOCKET_TIMEOUT|EIDLETIMEOUT/)
  if (unreachable)
    return `The package registry cannot be reached (${unreachable[0]}): check the network and npm's registry setting, then run the same command again.`
  if (/EACCES|EPERM/.test(output)) return `npm may not write in ${root}: run the command as the user who owns this folder.`
  return `The packages could not be installed (npm ended with ${status}); its own words stand above.`
}

function run(args) {
  return new Promise((resolve, reject) => {
    const child = npm([
      ...args,
      '--no-audit',
      '--no-fund',
      '--loglevel=error',
      '--fetch-retry-mintimeout=2000',
      '--fetch-retry-maxtimeout=10000',
    ])
    let output = ''
    child.stderr.on('data', (chunk) => {
      output += chunk
      process.stderr.write(chunk)
    })
    child.once('error', (error) =>
      reject(
        error.code === 'ENOENT'
          ? new PlainError('npm was not found: install it (it comes with Node) and run the same command again.')
          : error,
      ),
    )
    child.once('close', (status) => (status === 0 ? resolve() : reject(new PlainError(whyItFailed(output, status)))))
  })
}

/** Brings node_modules to the state of package-lock.json; one process at a time. */
export async function install() {
  if (isFresh()) return
  const waiting = () => say('another command installs the packages: waiting for it')
  await withLock(
    path.join(cloneDir, 'install.lock'),
    async () => {
      if (isFresh()) return
      const some = fs.existsSync(stamp)
      if (!some) needDiskSpace(root, neededMb, 'the packages')
      // `ci` is exact, but removes node_modules first, and with it the Node that may be running this.
      const verb = some ? 'install' : 'ci'
      say(`installing packages (npm ${verb}); the first time takes a minute or two`)
      await run([verb])
      const now = new Date()
      fs.utimesSync(stamp, now, now)
      say('packages are installed')
    },
    waiting,
  )
}
