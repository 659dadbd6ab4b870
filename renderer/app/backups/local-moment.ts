/** The local moment `2027-03-29T08:05` of an ISO instant, in the zone of this machine. */
export function localMoment(instant: string): string {
  const at = new Date(instant)
  const two = (value: number) => String(value).padStart(2, '0')
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`
}
