import { type KeyboardEvent, type ReactNode, useRef } from 'react'

export interface Column<Row> {
  readonly id: string
  readonly head: string
  readonly isNumber?: boolean
  readonly cell: (row: Row) => ReactNode
  readonly foot?: ReactNode
}

interface PickTableProps<Row> {
  readonly label: string
  readonly columns: readonly Column<Row>[]
  readonly rows: readonly Row[]
  readonly keyOf: (row: Row) => string
  readonly picked: string | null
  readonly onPick: (key: string, row: Row) => void
  /** Rows drawn apart, as heads of a group. */
  readonly isHead?: (row: Row) => boolean
  readonly depthOf?: (row: Row) => number
  /** For a group's row: whether its rows are shown; null for others. */
  readonly isOpen?: (row: Row) => boolean | null
  readonly rowClass?: (row: Row) => string
}

/** A table whose rows are picked: one stop for Tab, arrows to move, Enter or a click to pick. */
export function PickTable<Row>(props: PickTableProps<Row>) {
  const body = useRef<HTMLTableSectionElement>(null)
  const { columns, rows, keyOf, picked, onPick } = props
  const pickedIndex = rows.findIndex((row) => keyOf(row) === picked)
  const stop = Math.max(0, pickedIndex)

  function move(event: KeyboardEvent, index: number) {
    const target = { ArrowDown: index + 1, ArrowUp: index - 1, Home: 0, End: rows.length - 1 }[event.key]
    const row = rows[target ?? index]
    if (row === undefined) return
    if (target !== undefined) {
      event.preventDefault()
      const element = body.current?.children[target]
      if (element instanceof HTMLElement) element.focus()
      if (props.isOpen?.(row) == null) onPick(keyOf(row), row)
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      onPick(keyOf(row), row)
    }
  }

  return (
    <table className="pick-table" role={props.isOpen ? 'treegrid' : 'grid'} aria-label={props.label}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.id} scope="col" className={column.isNumber ? 'number' : undefined}>
              {column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody ref={body}>
        {rows.map((row, index) => {
          const key = keyOf(row)
          const open = props.isOpen?.(row) ?? null
          return (
            <tr
              key={key}
              tabIndex={index === stop ? 0 : -1}
              aria-selected={key === picked}
              {...(props.isOpen ? { 'aria-level': 1 + (props.depthOf?.(row) ?? 0) } : {})}
              {...(open === null ? {} : { 'aria-expanded': open })}
              className={[
                key === picked ? 'picked' : '',
                props.isHead?.(row) ? 'head-row' : '',
                props.rowClass?.(row) ?? '',
              ].join(' ')}
              onClick={() => onPick(key, row)}
              onKeyDown={(event) => move(event, index)}
            >
              {columns.map((column, place) => (
                <td
                  key={column.id}
                  className={column.isNumber ? 'number' : undefined}
                  style={place === 0 ? { paddingLeft: 8 + 18 * (props.depthOf?.(row) ?? 0) } : undefined}
                >
                  {place === 0 && open !== null ? (
                    <span className={open ? 'fold fold-open' : 'fold'} />
                  ) : null}
                  {column.cell(row)}
                </td>
              ))}
            </tr>
          )
        })}
      </tbody>
      {columns.some((column) => column.foot !== undefined) ? (
        <tfoot>
          <tr>
            {columns.map((column) => (
              <td key={column.id} className={column.isNumber ? 'number' : undefined}>
                {column.foot}
              </td>
            ))}
          </tr>
        </tfoot>
      ) : null}
    </table>
  )
}
