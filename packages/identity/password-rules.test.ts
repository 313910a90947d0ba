import { expect, test } from 'vitest'
import { LONGEST_PASSWORD, refuseWeakPassword } from './password-rules.ts'

const ROW = 'abcdefghijklmnopqrstuvwxyz0123456789'.repeat(4)

/** Milliseconds of processor that judging it takes, the least of three. */
async function costs(password: string): Promise<number> {
  const each: number[] = []
  for (let i = 0; i < 3; i++) {
    const before = process.cpuUsage()
    await refuseWeakPassword(password).catch(() => {})
    const { user, system } = process.cpuUsage(before)
    each.push((user + system) / 1000)
  }
  return Math.min(...each)
}

test('the longest password is judged about as soon as one half as long', async () => {
  await costs('three unrelated words') // the lists are loaded
  const [half, whole] = [await costs(ROW.slice(0, LONGEST_PASSWORD / 2)), await costs(ROW.slice(0, LONGEST_PASSWORD))]
  // Judged whole it took four times as long: the time grows with the square of the length.
  expect(whole / half).toBeLessThan(2)
})

test('a long password is refused for what it begins with: one word over and over, one letter', async () => {
  for (const weak of ['password1'.repeat(14), 'a'.repeat(LONGEST_PASSWORD)])
    await expect(refuseWeakPassword(weak)).rejects.toMatchObject({ code: 'invalid', message: expect.stringContaining('easy to guess') })
  await expect(refuseWeakPassword('window october river lamp '.repeat(4))).resolves.toBeUndefined()
})
