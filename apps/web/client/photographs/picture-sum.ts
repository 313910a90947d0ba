import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'

/** The sum that the office holds what comes against. The platform's own is there by https alone. */
export const sumOf = (bytes: ArrayBuffer): string => bytesToHex(sha256(new Uint8Array(bytes)))
