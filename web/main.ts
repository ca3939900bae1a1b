import './schema-settings.ts'
import { wearTheme } from './session.ts'
import { pageStyles } from './styles/page.ts'
import { tokens } from './styles/tokens.ts'
import './app-shell.ts'

wearTheme()
document.adoptedStyleSheets = [tokens.styleSheet!, pageStyles.styleSheet!]
