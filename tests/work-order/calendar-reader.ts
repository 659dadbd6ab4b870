/** A small reader of iCalendar (RFC 5545) that shares nothing with the writer: octets, unfolding, properties, escapes. */
export interface ReadEvent {
  readonly [property: string]: string
}

export function readCalendar(text: string): { readonly name: string; readonly events: readonly ReadEvent[] } {
  const octets = new TextEncoder().encode(text)
  const unfolded: number[] = []
  for (let at = 0; at < octets.length; at++) {
    const isFold =
      octets[at] === 13 && octets[at + 1] === 10 && (octets[at + 2] === 32 || octets[at + 2] === 9)
    if (isFold) at += 2
    else unfolded.push(octets[at] as number)
  }
  const lines = new TextDecoder('utf-8', { fatal: true }).decode(new Uint8Array(unfolded)).split('\r\n')
  if (lines.pop() !== '') throw new Error('the last line does not end')
  const events: Record<string, string>[] = []
  const open: string[] = []
  let name = ''
  for (const line of lines) {
    const match = /^([A-Z-]+)((?:;[^:]*)?):(.*)$/s.exec(line)
    if (match === null) throw new Error(`no property: ${line}`)
    const [, property = '', , value = ''] = match
    if (property === 'BEGIN') {
      open.push(value)
      if (value === 'VEVENT') events.push({})
    } else if (property === 'END') {
      if (open.pop() !== value) throw new Error(`${value} ends and is not open`)
    } else if (open.at(-1) === 'VEVENT') {
      const event = events.at(-1) as Record<string, string>
      if (property in event) throw new Error(`${property} twice in one event`)
      event[property] = unescaped(value)
    } else if (property === 'NAME') name = unescaped(value)
  }
  if (open.length > 0) throw new Error('something is left open')
  return { name, events }
}

function unescaped(value: string): string {
  let text = ''
  for (let at = 0; at < value.length; at++) {
    const letter = value[at]
    if (letter !== '\\') text += letter
    else {
      at++
      const next = value[at]
      text += next === 'n' || next === 'N' ? '\n' : next
    }
  }
  return text
}
