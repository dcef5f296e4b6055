import { type AsLeft, formatNumber, quantityForms } from "#casework";

const shown = (value: number | null, { quantity }: AsLeft): string => {
  if (value === null) return "not taken";
  const { factor, decimals, unit } = quantityForms[quantity];
  return `${formatNumber(value * factor, decimals)}${unit === "°" ? "°" : ` ${unit}`}`;
};

const changed = (row: AsLeft): string => {
  if (row.asFound === null || row.asLeft === null) return "";
  const { factor, decimals, unit } = quantityForms[row.quantity];
  const by = (row.asLeft - row.asFound) * factor;
  return `${by > 0 ? "+" : ""}${formatNumber(by, decimals)}${unit === "°" ? "°" : ` ${unit}`}`;
};

/** Heights and alignment as found beside as left. */
export const AsLeftTable = ({ rows }: { readonly rows: readonly AsLeft[] }) =>
  rows.length === 0 ? (
    <p className="label">Neither heights nor alignment were read before or after the work.</p>
  ) : (
    <table className="as-left">
      <thead>
        <tr>
          <th scope="col">reading</th>
          <th scope="col">as found</th>
          <th scope="col">as left</th>
          <th scope="col">changed by</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={`${row.place}${row.quantity}`}>
            <th scope="row">{row.label}</th>
            <td>{shown(row.asFound, row)}</td>
            <td className="as-left-now">{shown(row.asLeft, row)}</td>
            <td>{changed(row)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
