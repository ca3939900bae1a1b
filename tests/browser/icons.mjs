// Makes the icons that phones show anew from the mark: `node tests/browser/icons.mjs` after it was changed.
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { chromium as browserPath } from '../../server/setup/test-programs.mjs'

const folder = fileURLToPath(new URL('../../web/public/', import.meta.url))
const mark = readFileSync(`${folder}mark.svg`, 'utf8')
/** The ground to all edges and the leg smaller, for phones that cut icons to their own shape. */
const whole = mark
  .replace(/rx="\d+"/, '')
  .replace('<path', '<path transform="translate(16 16) scale(0.78) translate(-16 -16)"')

const icons = [
  { name: 'icon-192', size: 192, svg: mark },
  { name: 'icon-512', size: 512, svg: mark },
  { name: 'icon-whole-180', size: 180, svg: whole },
  { name: 'icon-whole-512', size: 512, svg: whole },
]

const browser = await chromium.launch({
  executablePath: browserPath(),
  args: ['--no-sandbox', '--disable-gpu'],
})
for (const { name, size, svg } of icons) {
  const page = await browser.newPage({ viewport: { width: size, height: size } })
  await page.setContent(`<style>* { margin: 0; display: block }</style>${svg}`)
  await page.screenshot({ path: `${folder}${name}.png`, omitBackground: true })
  await page.close()
}
await browser.close()
