import { keepFiles, offlineState, watchOffline } from './offline.ts'
import { fetchAllPages } from './page-files.ts'
import { wearTheme } from './session.ts'
import { pageStyles } from './styles/page.ts'
import { tokens } from './styles/tokens.ts'
import './app-shell.ts'

/** What is fetched ahead waits until the page at hand has had what it needs itself, ms. */
const AHEAD = 2000

wearTheme()
document.adoptedStyleSheets = [tokens.styleSheet!, pageStyles.styleSheet!]
watchOffline(() => {
  // What this device does not keep, a page left open has at hand.
  if (offlineState() === 'failed') void fetchAllPages()
})
addEventListener('load', () =>
  setTimeout(() => void (offlineState() === 'unsupported' ? fetchAllPages() : keepFiles()), AHEAD),
)
