/** Where a statement comes from, closed until somebody asks: section numbers do not belong into running text. */
export function SourceDetails({ source }: { readonly source: string }) {
  if (source === '') return null
  return (
    <details className="quiet">
      <summary>Source</summary>
      {source}
    </details>
  )
}
