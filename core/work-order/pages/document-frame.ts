import { asMarkup, html } from '../html-template.ts'
import type { Paper } from '../paper-size.ts'

/** Everything of a printed document before its first sheet. */
export function documentOpening(paper: Paper, title: string, style: string): string {
  return html`<!DOCTYPE html>
<html lang="en" class="${paper}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${title}</title>
<style>${asMarkup(style)}</style></head>
<body>
`.markup
}

/** What stands behind the last sheet. */
export const documentClosing = '\n</body>\n</html>\n'
