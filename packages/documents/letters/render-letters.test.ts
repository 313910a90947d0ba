import sharp from 'sharp'
import { getDocumentProxy } from 'unpdf'
import { describe, expect, test } from 'vitest'
import type { Letter, LetterHead } from './letter-page.tsx'
import { renderLetters } from './render-letters.ts'

const letter: Letter = {
  address: 'Hanna Vale\nOrchard Lane 14\nLarkmoor AZ 85001',
  ...{
    day: 'November 30, 2026',
    subject: 'The resin of your water softener',
    body: 'Dear Hanna Vale,\n\nIt is getting old.\n\nLarkmoor Soft Water',
  },
}
const bare = { firmName: 'Larkmoor Soft Water', telephone: '(555) 010-1200', address: null, mail: null, licence: null, logo: null } as const
const head = { ...bare, language: 'en' } as const

/** Each text of a page with where its line stands, points from the top left. */
async function pagesOf(letters: Letter[], paper: 'letter' | 'a4', under: Omit<LetterHead, 'paper'> = head) {
  const pdf = await getDocumentProxy(await renderLetters(letters, { ...under, paper }))
  return Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => {
      const page = await pdf.getPage(i + 1)
      const height = (page.view as number[])[3] ?? 0
      const { items } = await page.getTextContent()
      return items.flatMap((item) =>
        'str' in item && item.str.trim()
          ? [{ text: item.str, left: item.transform[4] as number, top: height - (item.transform[5] as number), width: item.width }]
          : [],
      )
    }),
  )
}

/** Everything that a head may say, at its longest. */
const full = async () => ({
  ...head,
  address:
    'Larkmoor Soft Water Treatment and Service Company, Incorporated\n1200 Industrial Parkway, Building 7\nLarkmoor AZ 85001\nUnited States',
  mail: 'service-and-appointments@larkmoor-soft-water.example',
  licence: 'Registrar of Contractors 123456, C-37\nWater treatment installer 0098',
  logo: {
    png: new Uint8Array(
      await sharp({ create: { width: 600, height: 208, channels: 3, background: '#336699' } })
        .png()
        .toBuffer(),
    ),
    ...{ width: 600, height: 208 },
  },
})

describe.each([
  // The part of the sheet that shows in the window however it slips: 2.5 to 3.17 in from the top, 0.875 to 4.375 in from the left.
  ['letter', { top: 180, foot: 228.3, left: 63, right: 315 }],
  // DIN 5008 form B: the field is 45 to 90 mm from the top and 20 to 105 mm from the left.
  ['a4', { top: 127.6, foot: 255.1, left: 56.7, right: 297.6 }],
] as const)('on %s', (paper, window) => {
  test.each([
    ['short', async () => head],
    ['as long as it may be', full],
  ])('the address, and nothing else, shows in the envelope’s window; under a head that is %s', async (_, of) => {
    const [page = []] = await pagesOf([letter], paper, await of())
    const shown = page.filter((one) => one.top > window.top && one.top < window.foot + 20)
    expect(shown.map((one) => one.text)).toEqual(letter.address.split('\n'))
    for (const one of shown) {
      expect(one.top).toBeLessThan(window.foot)
      expect(one.left).toBeGreaterThanOrEqual(window.left)
      expect(one.left + one.width).toBeLessThanOrEqual(window.right)
    }
  })

  test('a long, hostile name is cut at the window’s edge, and the letter keeps to its sheet', async () => {
    const name = `${'Maximiliana-'.repeat(30)} <script>alert(1)</script> 水`
    const pages = await pagesOf(
      [{ ...letter, address: `${name}\nOrchard Lane 14\nLarkmoor`, body: `Dear ${name},\n\nIt is getting old.` }],
      paper,
    )
    expect(pages).toHaveLength(1)
    expect((pages[0] ?? []).filter((one) => one.left + one.width > (paper === 'a4' ? 595.3 : 612))).toEqual([])
    const shown = (pages[0] ?? []).filter((one) => one.top > window.top && one.top < window.foot)
    for (const one of shown) expect(one.left + one.width).toBeLessThanOrEqual(window.right + 1)
  })
})

test('several letters are one file, each on a sheet of its own', async () => {
  const pages = await pagesOf([letter, { ...letter, subject: 'Another' }, letter], 'letter')
  expect(pages.map((page) => page.some((one) => one.text === 'Another'))).toEqual([false, true, false])
})

test('a letter is headed by everything that the company says of itself, above the window', async () => {
  const of = await full()
  const [page = []] = await pagesOf([letter], 'letter', of)
  const said = page.filter((one) => one.top < 147).map((one) => one.text)
  expect(said).toEqual([
    ...['Larkmoor Soft Water', expect.stringMatching(/^Larkmoor Soft Water Treatment/), '1200 Industrial Parkway, Building 7'],
    ...['Larkmoor AZ 85001', 'United States', '(555) 010-1200', expect.stringMatching(/^service-and-appointments@/)],
    ...['Registrar of Contractors 123456, C-37', 'Water treatment installer 0098'],
  ])
})
