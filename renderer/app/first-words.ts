/** The page shows its first words, then reads the program: reading it first would hold the words back. */
requestAnimationFrame(() => void import('./main.tsx'))
