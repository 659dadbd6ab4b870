import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { z } from 'zod'
import { useJobState } from '../state/app.ts'
import { App } from './App.tsx'
import './tokens.css'
import './base.css'
import './frame.css'
import './narrow.css'
import { Guard } from './Guard.tsx'
import { startUp } from './start-up.ts'

// The page may not make code from text (Content-Security-Policy), which zod's fast path would.
z.config({ jitless: true })

/** The last guard: whatever fails where no other one stands. */
function WholeWindow() {
  const job = useJobState((state) => state.job)
  return (
    <Guard part="The window" job={job}>
      <App />
    </Guard>
  )
}

const root = document.getElementById('root')
if (root === null) throw new Error('The page has no #root')
createRoot(root).render(
  <StrictMode>
    <WholeWindow />
  </StrictMode>,
)
void startUp()
