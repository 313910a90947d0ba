import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { AppError } from '@almanac/runtime/errors'
import { expect, test, vi } from 'vitest'
import { withUploadedFile } from './uploaded-file.ts'

vi.mock('server-only', () => ({}))

const refusal = new AppError('invalid', 'The file is too large.')
const request = (body: string) => new Request('http://localhost:3000/api/imports', { method: 'POST', body })

/** An upload whose reading lasts until it is let go. */
function slowUpload(companyId: string) {
  let letGo = () => {}
  const held = new Promise<void>((resolve) => {
    letGo = resolve
  })
  const done = withUploadedFile(request('Name'), companyId, 100, refusal, async (file) => {
    await held
    return file
  })
  return { done, letGo }
}

test('a firm’s second file waits for nobody: it is told to come again, and other firms’ files are read meanwhile', async () => {
  const first = slowUpload('a')
  await expect(slowUpload('a').done).rejects.toMatchObject({
    code: 'rate-limited',
    message: expect.stringContaining('Try again in a minute.'),
  })
  expect(await withUploadedFile(request('Street'), 'b', 100, refusal, (file) => readFile(file, 'utf8'))).toBe('Street')
  first.letGo()
  expect(existsSync(await first.done)).toBe(false)
  expect(await withUploadedFile(request('Town'), 'a', 100, refusal, (file) => readFile(file, 'utf8'))).toBe('Town')
})

test('a file that is too large is refused, and the firm’s next one is read', async () => {
  await expect(withUploadedFile(request('x'.repeat(101)), 'a', 100, refusal, async () => {})).rejects.toBe(refusal)
  expect(await withUploadedFile(request('x'.repeat(100)), 'a', 100, refusal, (file) => readFile(file, 'utf8'))).toHaveLength(100)
})
