/** What a look at the bytes of a log tells: how much of it SQLite would read, and whether something behind that was meant to count. */
interface LogReading {
  /** Frames from the first on whose checksums follow from one another. */
  readonly readableFrames: number
  /** There are frames of the same log which SQLite would pass over in silence. */
  readonly losesFrames: boolean
}

const headerBytes = 32
const frameHeaderBytes = 24
/** First words of a log whose checksums are of little-endian and of big-endian words (https://www.sqlite.org/fileformat2.html#walformat). */
const littleEndianLog = 0x377f0682
const bigEndianLog = 0x377f0683

/**
 * Reads a log as SQLite's recovery does. Recovery stops without a word at the first frame whose checksum is wrong, and with it every
 * edit behind. A process that dies while it writes leaves at most one frame cut off at the end of the file; the log is always emptied when
 * it is folded into the book. So a whole frame that cannot be read is damage, unless it is left over from an older log.
 */
export function readLog(log: Buffer): LogReading {
  if (log.length <= headerBytes) return { readableFrames: 0, losesFrames: false }
  const magic = log.readUInt32BE(0)
  const known = magic === littleEndianLog || magic === bigEndianLog
  const sum: Sum = known ? checksum(log.subarray(0, 24), [0, 0], magic === bigEndianLog) : [0, 0]
  if (!known || sum[0] !== log.readUInt32BE(24) || sum[1] !== log.readUInt32BE(28)) {
    return { readableFrames: 0, losesFrames: true }
  }
  return readFrames(log, sum, magic === bigEndianLog)
}

function readFrames(log: Buffer, headerSum: Sum, bigEndian: boolean): LogReading {
  const salts = [log.readUInt32BE(16), log.readUInt32BE(20)] as const
  const frameBytes = frameHeaderBytes + log.readUInt32BE(8)
  const frames = Math.floor((log.length - headerBytes) / frameBytes)
  let sum = headerSum
  for (let index = 0; index < frames; index++) {
    const frame = log.subarray(headerBytes + index * frameBytes, headerBytes + (index + 1) * frameBytes)
    const isOfOlderLog = frame.readUInt32BE(8) !== salts[0] && frame.readUInt32BE(12) !== salts[1]
    sum = checksum(
      frame.subarray(frameHeaderBytes),
      checksum(frame.subarray(0, 8), sum, bigEndian),
      bigEndian,
    )
    const follows =
      frame.readUInt32BE(8) === salts[0] &&
      frame.readUInt32BE(12) === salts[1] &&
      frame.readUInt32BE(16) === sum[0] &&
      frame.readUInt32BE(20) === sum[1]
    if (!follows) return { readableFrames: index, losesFrames: !isOfOlderLog }
  }
  return { readableFrames: frames, losesFrames: false }
}

type Sum = readonly [number, number]

/** The running checksum of the log: two sums modulo 2^32 that feed each other, over words taken in pairs. */
function checksum(bytes: Buffer, before: Sum, bigEndian: boolean): Sum {
  let [first, second] = before
  const word = bigEndian ? (at: number) => bytes.readUInt32BE(at) : (at: number) => bytes.readUInt32LE(at)
  for (let at = 0; at < bytes.length; at += 8) {
    first = (first + word(at) + second) >>> 0
    second = (second + word(at + 4) + first) >>> 0
  }
  return [first, second]
}
