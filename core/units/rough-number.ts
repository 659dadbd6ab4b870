/** With one decimal below a hundred, whole from there, thousands parted by commas: `0.3`, `41.3`, `120`, `11,817`. */
export function roughNumber(value: number): string {
  if (Math.abs(value) < 100) return String(Number(value.toFixed(1)))
  return withCommas(value)
}

/** To a whole, thousands parted by commas: `11,817`. */
export function withCommas(value: number): string {
  return value.toFixed(0).replace(/\B(?=(\d{3})+$)/g, ',')
}
