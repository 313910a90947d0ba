// Passwords of an embedded cluster's logins: random, made once, kept beside the cluster for its owner's eyes only.
import { randomBytes } from 'node:crypto'
import fs from 'node:fs'

const LOGINS = ['postgres', 'almanac_owner', 'almanac_app_login', 'almanac_identity_login']

export const randomSecret = () => randomBytes(24).toString('base64url')

/** Writes a file that only its owner can read, whole or not at all. */
export function writePrivate(file, text) {
  const half = `${file}.${process.pid}`
  fs.writeFileSync(half, text, { mode: 0o600 })
  fs.renameSync(half, file)
}

/** Reads the passwords in `file`, making what is missing. `made` tells that the file was not there. */
export function clusterPasswords(file) {
  const known = fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : {}
  const passwords = Object.fromEntries(LOGINS.map((login) => [login, known[login] ?? randomSecret()]))
  if (LOGINS.some((login) => !known[login])) writePrivate(file, `${JSON.stringify(passwords, null, 2)}\n`)
  return { passwords, made: !known.postgres }
}
