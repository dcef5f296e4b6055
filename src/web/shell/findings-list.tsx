import type { Finding } from "#contract";

/** Everything that is wrong with what came in, at once: where, what came, what was needed, what to try. */
export const FindingsList = ({ findings }: { readonly findings: readonly Finding[] }) => (
  <table className="findings">
    <caption>
      {findings.length === 1 ? "One thing to put right" : `${findings.length} things to put right`}; nothing was kept
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
          <th scope="row">{finding.path === "" ? "the whole file" : finding.path}</th>
          <td>{finding.got}</td>
          <td>{finding.needed}</td>
          <td>{finding.hint}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
