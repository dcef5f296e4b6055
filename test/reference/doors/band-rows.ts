import { askDoor, type Finding } from "#contract";
import { readReference } from "../linkage/corner-record.ts";
import { absolute, type Row, relative, Score, type Tolerance } from "../score.ts";

interface Share {
  readonly point: string;
  readonly axis: string;
  readonly share: number;
}
type Position = Readonly<Record<string, number | null | Readonly<Record<string, readonly Share[]>>>>;
interface BandOutput {
  readonly positions: readonly Position[];
  readonly difference?: Readonly<Record<string, number>>;
}
interface BandFile {
  readonly cases: readonly { readonly input: unknown; readonly output: BandOutput }[];
  readonly refused: readonly { readonly input: unknown; readonly at: readonly string[] }[];
}

const SOURCE = "band reference";
/** Shares closer than this may stand in either order. */
const TIE = 1e-6;

function toleranceOf(key: string): Tolerance {
  if (key === "toe_sign_probability") return absolute(1e-8);
  if (key === "camber_change_deg" || key === "toe_change_deg") return absolute(1e-9);
  return relative(1e-7);
}

/** Same coordinates in the same order, but for shares too close to tell. */
function sameOrder(got: readonly Share[], want: readonly Share[]): boolean {
  return want.every((w, i) => {
    const g = got[i];
    if (!g) return false;
    if (g.point === w.point && g.axis === w.axis) return true;
    const swapped = want.find((other) => other.point === g.point && other.axis === g.axis);
    return swapped !== undefined && Math.abs(swapped.share - w.share) <= TIE;
  });
}

function comparePosition(score: Score, got: Position, want: Position): void {
  score.agree("keys of a position", Object.keys(got).sort().join() === Object.keys(want).sort().join());
  for (const [key, value] of Object.entries(want)) {
    if (key === "top") continue;
    if (value === null) score.agree(`${key} is null`, got[key] === null);
    else if (typeof value === "number") score.compare(key, got[key], value, toleranceOf(key));
  }
  const gotTop = (got.top ?? {}) as Readonly<Record<string, readonly Share[]>>;
  const wantTop = want.top as Readonly<Record<string, readonly Share[]>>;
  score.agree("quantities that are ranked", Object.keys(gotTop).sort().join() === Object.keys(wantTop).sort().join());
  for (const [quantity, shares] of Object.entries(wantTop)) {
    const ranked = gotTop[quantity] ?? [];
    score.agree("order of the five largest shares", ranked.length === shares.length && sameOrder(ranked, shares));
    shares.forEach((share, i) => {
      score.compare("share of the variance", ranked[i]?.share, share.share, absolute(1e-7));
    });
  }
}

/** All rows of the bands, and what is refused. */
export function scoreBand(): readonly Row[] {
  const file = readReference<BandFile>("doors/linkage-band.json");
  const score = new Score("linkage.band", SOURCE);
  for (const one of file.cases) {
    const answer = askDoor("linkage.band", one.input);
    if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
    const output = answer.output as BandOutput;
    score.agree("number of positions", output.positions.length === one.output.positions.length);
    one.output.positions.forEach((want, i) => {
      comparePosition(score, output.positions[i] ?? {}, want);
    });
    score.agree("difference is given where it is asked for", !output.difference === !one.output.difference);
    for (const [key, value] of Object.entries(one.output.difference ?? {}))
      score.compare(`difference.${key}`, output.difference?.[key], value, relative(1e-4));
  }
  for (const one of file.refused) {
    const answer = askDoor("linkage.band", one.input);
    const findings: readonly Finding[] = "findings" in answer ? answer.findings : [];
    score.agree(
      "refused at the place named",
      one.at.every((path) => findings.some((f) => f.path === path)),
    );
  }
  return score.rows();
}
