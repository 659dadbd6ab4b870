import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ['**/*.test.ts', '**/*.test.tsx'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
})
