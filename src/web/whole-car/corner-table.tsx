import { type CornerRow, type Figure, formatBand, formatFigure } from "#casework";

const PLACES = ["frontLeft", "frontRight", "rearLeft", "rearRight"] as const;
const HEADS: Readonly<Record<(typeof PLACES)[number], string>> = {
  frontLeft: "front left",
  frontRight: "front right",
  rearLeft: "rear left",
  rearRight: "rear right",
};

const Cell = ({ figure }: { readonly figure: Figure | null }) => {
  if (figure === null) return <td>–</td>;
  if (!figure.signSure)
    return (
      <td>
        <span className="note">sign not sure</span>
      </td>
    );
  const band = formatBand(figure);
  return (
    <td>
      {formatFigure(figure)}
      {band === null ? null : <span className="note">{band}</span>}
    </td>
  );
};

/** What all four wheels do, beside each other; each figure opens in the margin. */
export const CornerTable = ({ rows }: { readonly rows: readonly CornerRow[] }) =>
  rows.length === 0 ? null : (
    <div className="corner-table">
      <table>
        <caption>Each wheel; below each figure where it lies with 95 %</caption>
        <thead>
          <tr>
            <th scope="col">figure</th>
            {PLACES.map((place) => (
              <th key={place} scope="col">
                {HEADS[place]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, cells }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {PLACES.map((place) => (
                <Cell key={place} figure={cells[place]} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
