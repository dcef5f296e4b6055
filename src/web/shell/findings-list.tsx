import type { Finding } from "#contract";
import { Breakable } from "./breakable.tsx";

interface FindingsListProps {
  readonly findings: readonly Finding[];
  /** What became of what came in: "nothing was kept". */
  readonly outcome?: string;
  /** Names a place as the page does; absent, or where it has no name for one: the path itself. */
  readonly nameOf?: (path: string) => string | null;
}

/** Everything that is wrong with what came in, at once: where, what came, what was needed, what to try. */
export const FindingsList = ({ findings, outcome, nameOf }: FindingsListProps) => (
  <table className="findings">
    <caption>
      {findings.length === 1 ? "One thing to put right" : `${findings.length} things to put right`}
      {outcome === undefined ? "" : `; ${outcome}`}
    </caption>
    <thead>
      <tr>
        <th scope="col">Where</th>
        <th scope="col">Came</th>
        <th scope="col">Needed</th>
        <th scope="col">Try</th>
      </tr>
    </thead>
    <tbody>
      {findings.map((finding) => (
        <tr key={`${finding.code} ${finding.path} ${finding.got}`}>
          <th scope="row">
            {finding.path === "" ? "the whole" : (nameOf?.(finding.path) ?? <Breakable text={finding.path} />)}
          </th>
          <td>
            <Breakable text={finding.got} />
          </td>
          <td>{finding.needed}</td>
          <td>{finding.hint}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
