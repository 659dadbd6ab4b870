/** Style of the week sheet, today and the family page, added to the style of all pages. */
export const planStyle = `
tbody th { color: var(--ink); border-bottom: none; vertical-align: top; font-size: inherit; padding-top: 1mm; }
.week p, .today p { margin: 0 0 0.6mm; }
.week th:first-child { width: 14mm; }
.week.roomy { font-size: 9pt; } .week.close { font-size: 8pt; } .week.closest { font-size: 7pt; line-height: 1.2; }
.week .day > tr:first-child > * { border-top: 0.35mm solid var(--ink); }
.week .day { break-inside: avoid; }
.week .chores td { border-top: none; }
.half { max-height: 124mm; }
`
