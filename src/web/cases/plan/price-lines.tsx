import { formatMoney, formatNumber, type PriceLine, type ShopRates } from "#casework";
import { timeWords } from "../appraisal/time-words.ts";
import { type Case, useCase } from "../case/case-context.tsx";
import { recorderWords } from "../case/recorder.ts";

/** What one line is reckoned from: "2 x 40 EUR", "0.8 h x 92 EUR/h"; "" where there is nothing to reckon. */
const reckoned = ({ kind, count, each, hours }: PriceLine, { currency, labourCentsPerHour }: ShopRates): string => {
  if (hours !== null) return `${formatNumber(hours, 2)} h × ${formatMoney(labourCentsPerHour, currency)}/h`;
  if (kind === "part" && each !== null && count > 1) return `${count} × ${formatMoney(each, currency)}`;
  return "";
};

const sharedWords = ({ among, whole }: PriceLine, currency: string): string =>
  among.length < 2 || whole === null
    ? ""
    : `${formatMoney(whole, currency)} once, shared by ${among.length}: ${among.join("; ")}`;

const Line = ({ line, rates, whole }: { line: PriceLine; rates: ShopRates; whole: boolean }) => {
  const { currency } = rates;
  const cents = whole ? line.whole : line.cents;
  const notes = [reckoned(line, rates), sharedWords(line, currency)].filter((words) => words !== "");
  return (
    <tr>
      <th scope="row">
        {line.label}
        {notes.map((words) => (
          <span key={words} className="note">
            {words}
          </span>
        ))}
      </th>
      <td>{cents === null ? "not on file" : formatMoney(cents, currency)}</td>
    </tr>
  );
};

/** Whose the prices, hours and rates are, and since when. */
const whoseWords = ({ family, settings, settingsSaved, car }: Case, isUsual: boolean): readonly string[] => [
  isUsual
    ? "Hours: usual for these layouts, invented. Prices of parts: not on file, this car line's sheet has none."
    : `Parts and hours: from the sheet of ${family?.family.name ?? "this car line"}${car.invented ? ", invented" : ""}; it keeps no date of a price.`,
  settings === null || settingsSaved === null
    ? "Hourly rate, visit and tax: start values, invented; the workshop has not set its own."
    : `Hourly rate, visit and tax: the workshop's${settings.invented ? ", invented" : ""}, saved by ${recorderWords(settingsSaved.by)}, ${timeWords(settingsSaved.at)}.`,
];

interface PriceTableProps {
  readonly lines: readonly PriceLine[];
  readonly rates: ShopRates;
  readonly total: number;
  /** True where every line stands with the whole of it, false where with its share. */
  readonly whole: boolean;
  readonly relation: string;
  readonly isUsual: boolean;
}

/** What a price is made of: every part and piece of work, what is shared once, whose it is; it adds up to the price. */
export const PriceTable = ({ lines, rates, total, whole, relation, isUsual }: PriceTableProps) => {
  const held = useCase();
  const { currency, taxShare } = rates;
  return (
    <>
      <table className="price-facts">
        <caption className="unseen">What the price is made of</caption>
        <tbody>
          {lines.map((line) => (
            <Line key={line.id} line={line} rates={rates} whole={whole} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">without tax</th>
            <td>{formatMoney(total, currency)}</td>
          </tr>
          <tr>
            <th scope="row">with tax, {formatNumber(100 * taxShare, 0)} %</th>
            <td>{formatMoney(Math.round(total * (1 + taxShare)), currency)}</td>
          </tr>
        </tfoot>
      </table>
      <dl className="price-whose">
        <div>
          <dt className="note">Relation</dt>
          <dd>{relation}</dd>
        </div>
        <div>
          <dt className="note">Whose</dt>
          <dd>{whoseWords(held, isUsual).join(" ")}</dd>
        </div>
      </dl>
    </>
  );
};
