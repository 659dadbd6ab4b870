import { expect, test } from 'vitest'
import { contentSecurityPolicy, paperSecurityPolicy } from '../../electron/pages/pages.ts'

test('a document on its way to paper has no origin, runs nothing and loads nothing', () => {
  const directives = paperSecurityPolicy.split('; ')
  expect(directives).toContain('sandbox')
  expect(directives).toContain("default-src 'none'")
  const openings = directives.filter((directive) =>
    /https?:|\*|'self'|script|frame-src|connect/.test(directive),
  )
  expect(openings).toEqual([])
})

test('the program’s own pages take code from the program’s own files only, and open no address', () => {
  const directives = contentSecurityPolicy.split('; ')
  expect(directives).toContain("default-src 'none'")
  expect(directives).toContain("script-src 'self'")
  expect(contentSecurityPolicy).not.toMatch(/https?:|\*|unsafe-eval|script-src[^;]*unsafe-inline/)
})
