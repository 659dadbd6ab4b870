interface ComparedRow {
  readonly key: string
  readonly cells: readonly string[]
  readonly isSum?: boolean
}

/** Planned and real side by side: the first column says of what, the others are numbers. */
export function ComparedTable(props: {
  readonly heads: readonly string[]
  readonly rows: readonly ComparedRow[]
  readonly sum?: readonly string[]
}) {
  const { heads, rows, sum } = props
  const all = sum === undefined ? rows : [...rows, { key: 'sum', cells: sum, isSum: true }]
  return (
    <table className="sum-table compared-table">
      <thead>
        <tr>
          {heads.map((head, index) => (
            <th key={head} scope="col" className={index === 0 ? undefined : 'number'}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {all.map(({ key, cells, isSum }) => (
          <tr key={key} className={isSum ? 'sum-total' : undefined}>
            {heads.map((head, index) => (
              <td key={head} className={index === 0 ? undefined : 'number'}>
                {cells[index]}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
