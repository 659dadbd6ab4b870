import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ['**/*.test.ts', '**/*.test.tsx'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // One for each core: by itself one is left free, though journeys wait more than they work.
    maxWorkers: '100%',
  },
})
