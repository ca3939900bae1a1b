import './schema-settings.ts'
import './session.ts'
import { pageStyles } from './styles/page.ts'
import { tokens } from './styles/tokens.ts'
import './app-shell.ts'

document.adoptedStyleSheets = [tokens.styleSheet!, pageStyles.styleSheet!]
