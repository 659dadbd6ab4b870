/** The patterns of drying, nights and absence, named once for the lanes and the legend; an SVG that is not shown still lends them. */
export function Patterns() {
  return (
    <svg width="0" height="0" className="plan-patterns" aria-hidden="true">
      <defs>
        <pattern id="drying-hatch" width="7" height="7" patternUnits="userSpaceOnUse">
          <rect width="7" height="7" fill="var(--wait-soft)" />
          <path d="M-1 8 L8 -1" stroke="var(--wait)" strokeWidth="1.1" />
        </pattern>
        <pattern id="night-dots" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" fill="var(--paper-sunk)" />
          <circle cx="1.5" cy="1.5" r="0.8" fill="var(--line-strong)" />
        </pattern>
        <pattern id="absent-lines" width="5" height="5" patternUnits="userSpaceOnUse">
          <rect width="5" height="5" fill="var(--paper-sunk)" />
          <path d="M0 2.5 H5" stroke="var(--line)" strokeWidth="1" />
        </pattern>
      </defs>
    </svg>
  )
}
