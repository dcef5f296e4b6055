export interface TitleCell {
  readonly label: string;
  readonly value: string;
}

export interface TitleBlockFacts {
  readonly title: string;
  /** What on this sheet is invented, or a word on where it stands. */
  readonly note: string;
  readonly rows: readonly (readonly TitleCell[])[];
}

/** The title block of a drawing, lower right; one line on an upright tablet. */
export const TitleBlock = ({ title, note, rows }: TitleBlockFacts) => (
  <footer className="title-block">
    <div className="title-block-head">
      <p className="title-block-name">{title}</p>
      <p className="note">{note}</p>
    </div>
    {rows.map((row) => (
      <dl key={row.map((cell) => cell.label).join()} className="title-block-row">
        {row.map((cell) => (
          <div key={cell.label} className="title-block-cell" data-cell={cell.label}>
            <dt className="note">{cell.label}</dt>
            <dd>{cell.value}</dd>
          </div>
        ))}
      </dl>
    ))}
  </footer>
);
