import {
  changesShown,
  formatChange,
  formatNumber,
  isNothing,
  type RubberRow,
  type TravelChange,
  type TravelRow,
} from "#casework";
import { mmFromMetres } from "#quantity";

const heightWords = ({ travel }: TravelChange): string => {
  const mm = mmFromMetres(travel);
  return `${mm > 0 ? "+" : ""}${formatNumber(mm, 0)} mm`;
};

const ChangeCell = ({ change }: { readonly change: TravelChange }) => {
  if (!change.sure || isNothing(change))
    return (
      <td>
        <span className="note note-wraps">{change.sure ? "under 0.01°" : "sign not sure"}</span>
      </td>
    );
  const { value, low, high } = formatChange(change);
  return (
    <td>
      {value}
      <span className="note">{low} to</span>
      <span className="note">{high}</span>
    </td>
  );
};

interface ChangeTableProps {
  readonly caption: string;
  readonly head: string;
  readonly toe: readonly TravelChange[];
  readonly camber: readonly TravelChange[];
}

const ChangeTable = ({ caption, head, toe, camber }: ChangeTableProps) => (
  <table className="travel-table travel-changes">
    <caption>{caption}</caption>
    <thead>
      <tr>
        <th scope="col">{head}</th>
        {toe.map((change) => (
          <th key={change.travel} scope="col">
            {heightWords(change)}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      <tr>
        <th scope="row">toe</th>
        {toe.map((change) => (
          <ChangeCell key={change.travel} change={change} />
        ))}
      </tr>
      <tr>
        <th scope="row">camber</th>
        {camber.map((change) => (
          <ChangeCell key={change.travel} change={change} />
        ))}
      </tr>
    </tbody>
  </table>
);

/** How toe and camber of a whole corner change from its ride height, also to the travel asked for. */
export const RowTable = ({ row, name }: { readonly row: TravelRow; readonly name: string }) => (
  <ChangeTable
    caption={row.subject === "sound" ? name : row.words}
    head="from ride height"
    toe={changesShown(row, "toe")}
    camber={changesShown(row, "camber")}
  />
);

/** What a torn or firmer rubber does against the sound corner at the same height and force. */
export const RubberTable = ({ row }: { readonly row: RubberRow }) => (
  <ChangeTable caption={row.words} head="less sound" toe={row.toe} camber={row.camber} />
);
