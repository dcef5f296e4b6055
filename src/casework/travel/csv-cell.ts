/** A cell of comma-separated values: quoted where it holds a comma, a quote or a line end (RFC 4180). */
export function csvCell(value: string | number): string {
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
