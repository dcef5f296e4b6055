/** A linear programme with yes-or-no variables, to be minimised; every variable lies in [0, 1]. */
export interface Programme {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

export interface Column {
  readonly name: string;
  readonly cost: number;
  readonly binary: boolean;
}

export type Relation = "<=" | "=" | ">=";

export interface Row {
  readonly terms: readonly Term[];
  readonly relation: Relation;
  readonly bound: number;
}

export type Term = readonly [coefficient: number, column: string];

/** Collects columns and rows in the order they are made. */
export class ProgrammeBuilder {
  private readonly columns = new Map<string, Column>();
  private readonly rows: Row[] = [];

  /** Adds a variable and returns its name. */
  column(name: string, cost: number, binary = false): string {
    this.columns.set(name, { name, cost, binary });
    return name;
  }

  row(terms: readonly Term[], relation: Relation, bound: number): void {
    this.rows.push({ terms, relation, bound });
  }

  build(): Programme {
    return { columns: [...this.columns.values()], rows: this.rows };
  }
}

const number = (value: number): string => String(value);

const formatTerm = ([coefficient, name]: Term): string =>
  `${coefficient < 0 ? "-" : "+"} ${number(Math.abs(coefficient))} ${name}`;

/** Long lines are cut: some readers of the format take no more than 500 characters. */
const PER_LINE = 8;

function formatTerms(terms: readonly Term[]): string {
  const lines: string[] = [];
  for (let i = 0; i < terms.length; i += PER_LINE) {
    lines.push(
      terms
        .slice(i, i + PER_LINE)
        .map(formatTerm)
        .join(" "),
    );
  }
  return lines.join("\n  ");
}

/** The programme as text in the usual LP form (objective, rows, bounds, binaries), to full double precision. */
export function formatProgramme(programme: Programme): string {
  const { columns, rows } = programme;
  const unknown = columns[0]?.name ?? "none";
  const terms = (row: Row): readonly Term[] => (row.terms.length > 0 ? row.terms : [[0, unknown]]);
  return [
    "Minimize",
    ` cost: ${formatTerms(columns.map((c) => [c.cost, c.name] as const))}`,
    "Subject To",
    ...rows.map((row, i) => ` r${i + 1}: ${formatTerms(terms(row))} ${row.relation} ${number(row.bound)}`),
    "Bounds",
    ...columns.map((c) => ` 0 <= ${c.name} <= 1`),
    "Binary",
    ...columns.filter((c) => c.binary).map((c) => ` ${c.name}`),
    "End",
    "",
  ].join("\n");
}
