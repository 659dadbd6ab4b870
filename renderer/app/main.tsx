import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { z } from 'zod'
import { App } from './App.tsx'
import './tokens.css'
import './base.css'
import './frame.css'
import { startUp } from './start-up.ts'

// The page may not make code from text (Content-Security-Policy), which zod's fast path would.
z.config({ jitless: true })

const root = document.getElementById('root')
if (root === null) throw new Error('The page has no #root')
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
void startUp()
