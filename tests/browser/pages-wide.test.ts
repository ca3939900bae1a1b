import { withBrowser } from './browser.ts'
import { everyPageAt } from './every-page.ts'

everyPageAt(1280, withBrowser({ demo: true }))
