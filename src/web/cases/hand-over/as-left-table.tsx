import { type AsLeft, type AxleAsLeft, formatReading, type JudgedAsLeft, quantityForms } from "#casework";

const shown = (value: number | null, { quantity }: AsLeft): string => {
  if (value === null) return "not taken";
  const { unit } = quantityForms[quantity];
  return `${formatReading(quantity, value)}${unit === "°" ? "°" : ` ${unit}`}`;
};

const changed = (row: AsLeft): string => {
  if (row.asFound === null || row.asLeft === null) return "";
  const { unit } = quantityForms[row.quantity];
  const by = row.asLeft - row.asFound;
  return `${by > 0 ? "+" : ""}${formatReading(row.quantity, by)}${unit === "°" ? "°" : ` ${unit}`}`;
};

/** What came of a reading, under it; nothing where it was held against nothing. */
const Came = ({ decision }: { readonly decision: JudgedAsLeft["leftDecision"] }) =>
  decision === null ? null : <span className="note as-left-came">{decision}</span>;

/** Heights and alignment as found beside as left. */
export const AsLeftTable = ({
  rows,
  axles,
}: {
  readonly rows: readonly JudgedAsLeft[];
  readonly axles: readonly AxleAsLeft[];
}) =>
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
            <th scope="row">
              {row.label}
              <span className="note"> {row.limitWords ?? "limit not on file"}</span>
            </th>
            <td>
              {shown(row.asFound, row)}
              <Came decision={row.foundDecision} />
            </td>
            <td className="as-left-now">
              {shown(row.asLeft, row)}
              <Came decision={row.leftDecision} />
            </td>
            <td>{changed(row)}</td>
          </tr>
        ))}
        {axles.map((axle) => (
          <tr key={axle.place}>
            <th scope="row">{axle.label}, both wheels</th>
            <td>{axle.asFound ?? "not taken"}</td>
            <td className="as-left-now">{axle.asLeft ?? "not taken"}</td>
            <td />
          </tr>
        ))}
      </tbody>
    </table>
  );
