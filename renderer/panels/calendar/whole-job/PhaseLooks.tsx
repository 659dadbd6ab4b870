import { type Phase, phaseWords } from '../../../../core/work-order/phases.ts'

/** Patterns of the phases: told apart by their lines in black and white too. */
export function PhasePatterns() {
  return (
    <svg width="0" height="0" className="plan-patterns" aria-hidden="true">
      <defs>
        <pattern id="phase-prepare" width="8" height="8" patternUnits="userSpaceOnUse">
          <rect width="8" height="8" fill="var(--paper-raised)" />
          <path d="M-1 1 L1 -1 M0 8 L8 0 M7 9 L9 7" stroke="var(--dark-soft)" strokeWidth="1" />
        </pattern>
        <pattern id="phase-prime" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" fill="var(--paper-raised)" />
          <circle cx="3" cy="3" r="1.2" fill="var(--dark-soft)" />
        </pattern>
        <pattern id="phase-ceiling" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" fill="var(--act-soft)" />
          <path d="M0 3 H6" stroke="var(--act)" strokeWidth="1.2" />
        </pattern>
        <pattern id="phase-woodwork" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" fill="var(--act-soft)" />
          <path d="M3 0 V6" stroke="var(--act)" strokeWidth="1.6" />
        </pattern>
      </defs>
    </svg>
  )
}

/** A phase in the legend. */
export function PhaseSign({ phase }: { readonly phase: Phase }) {
  return (
    <span>
      <svg width="20" height="12" aria-hidden="true">
        <rect width="20" height="12" className={`phase phase-${phase}`} />
      </svg>
      {phaseWords[phase]}
    </span>
  )
}
