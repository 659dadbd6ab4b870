import type { ToolName } from '../../canvas/tools/tool.ts'

function Sign(props: { readonly d: string; readonly fill?: boolean }) {
  return (
    <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true" className="tool-sign">
      <path
        d={props.d}
        fill={props.fill ? 'currentColor' : 'none'}
        stroke="currentColor"
        strokeWidth="1.5"
        strokeLinejoin="round"
        strokeLinecap="round"
      />
    </svg>
  )
}

/** Lines on a pad, each with its room. */
export const listSign = <Sign d="M3 4h3v3H3zM3 12h3v3H3zM9 5.5h8M9 13.5h8" />

/** Small line drawings of what each tool draws, as on a plan. */
export const toolSigns: Readonly<Record<ToolName, React.ReactNode>> = {
  pick: <Sign d="M5 3v13l3.5-3.5L11 17l2-1-2.3-4.3H16z" />,
  rectangle: <Sign d="M3 4h14v12H3z" />,
  outline: <Sign d="M3 4h14v6h-6v6H3z" />,
  door: <Sign d="M3 17V4a13 13 0 0 1 13 13M1 17h3M16 17h3" />,
  casedOpening: <Sign d="M2 10h4M14 10h4M6 7v6M14 7v6" />,
  window: <Sign d="M2 7h16M2 10h16M2 13h16M4 7v6M16 7v6" />,
  fireplace: <Sign d="M3 16V5h14v11M6 16v-6h8v6" />,
  builtIn: <Sign d="M3 4h14v12H3zM3 10h14M10 4v12" />,
  other: <Sign d="M4 4h12v12H4zM4 16 16 4" />,
}
