import fc from 'fast-check'
import { expect, test } from 'vitest'
import { documentParts, workOrderHtml } from '../../core/work-order/html.ts'
import { cssString, escapeHtml, html } from '../../core/work-order/html-template.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { sampleOrder } from './sample-order.ts'

const order = sampleOrder()
const page = workOrderHtml(order, 'letter', documentParts)

test('the template escapes what is put into it and not what it made itself', () => {
  const inner = html`<b>${'<&>'}</b>`
  expect(html`<p title="${`"'`}">${inner}${null}${false}${[1, 'two']}</p>`.markup).toBe(
    '<p title="&quot;&#39;"><b>&lt;&amp;&gt;</b>1two</p>',
  )
})

test('no text leaves a dangerous character or a control character behind', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const escaped = escapeHtml(text)
      expect(escaped).not.toMatch(/[<>"']/)
      expect(escaped).not.toContain('\u0000')
      expect(escaped.replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&')
    }),
    { numRuns: 40, seed: 5 },
  )
})

test('text in the style sheet cannot end its string, its rule or the style element', () => {
  const text = cssString('a"; } </style><script>\n\\')
  expect(text).toMatch(/^"[A-Za-z0-9 \\]*"$/)
  expect(text).toContain('\\3c ')
})

test('a note that tries to break out of its table stays text', () => {
  expect(page).toContain('&lt;/td&gt;&lt;/table&gt;&lt;script&gt;alert(1)&lt;/script&gt;')
  expect(page).not.toContain('<script')
})

test('the document needs nothing from outside and runs nothing', () => {
  expect(page).not.toMatch(/\b(src|href)=|url\((?!#)|@import|javascript:|\son[a-z]+=/i)
})

test('headings step down without gaps: one first heading, then sections', () => {
  const levels = [...page.matchAll(/<h([1-6])[ >]/g)].map((match) => Number(match[1]))
  expect(levels.filter((level) => level === 1)).toHaveLength(1)
  for (const [index, level] of levels.entries()) {
    expect(level).toBeLessThanOrEqual((levels[index - 1] ?? 0) + 1)
  }
})

test('every table has a caption and every head cell a table head row', () => {
  expect(page.match(/<table/g)?.length).toBe(page.match(/<caption/g)?.length)
  expect(page).toContain('<th scope="col">')
  expect(page).not.toMatch(/<th(?! scope=)\b(?!ead)/)
})

test("the crew's papers hold no price, and the proposal is a paper of its own", () => {
  const crew = workOrderHtml(order, 'letter')
  expect(crew).not.toContain('$')
  const proposal = workOrderHtml(order, 'a4', ['proposal'])
  expect(proposal).toContain('<title>Proposal: One plain room</title>')
  expect(proposal).toContain('size: A4')
  expect(proposal.match(/class="sheet/g)).toHaveLength(1)
})

test('a metric job is printed in metres with dates and hours to match', () => {
  const job = sampleOrder()
  const metric = workOrderHtml(
    { ...sampleOrder({ header: { ...headerOf(), unitSystem: 'metric' } }), title: job.title },
    'a4',
  )
  expect(metric).toContain('32.7 m²')
  expect(metric).toContain('<dd>Mon 29 Mar</dd>')
  expect(metric).not.toContain('sq ft')
})

function headerOf() {
  return plainJob().header
}

test('nothing printed says that a surface is free of lead or asbestos', () => {
  const sentences = page.match(/[^.>]*\b(lead|asbestos)\b[^.<]*/gi) ?? []
  expect(sentences.length).toBeGreaterThan(0)
  for (const sentence of sentences) {
    if (/free of lead|lead-free|no asbestos|asbestos-free/i.test(sentence)) {
      expect(sentence).toMatch(/Nothing on these pages says/)
    }
  }
})

test('control characters of both sets are dropped, so that no printer or reader acts on them', () => {
  expect(escapeHtml('a\u0080b\u0085c\u009bd\u0007e\u00a0f')).toBe('abcde\u00a0f')
})
