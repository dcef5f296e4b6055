import { Link, useRouter } from "@tanstack/react-router";
import { useState } from "react";
import { currentRecorder } from "../cases/case/recorder.ts";
import { saveOffList } from "../server/car-line.ts";
import type { FamilyLine } from "../server/family-list.ts";

/** Puts a car line back on the list. */
export const PutBack = ({ line }: { readonly line: FamilyLine }) => {
  const router = useRouter();
  const [silent, setSilent] = useState(false);
  const putBack = async () => {
    const answer = await saveOffList(line.id, false, currentRecorder());
    setSilent(answer.kind !== "answer");
    if (answer.kind === "answer") await router.invalidate();
  };
  return (
    <>
      <button type="button" className="link" aria-label={`Put it back: ${line.name}`} onClick={() => void putBack()}>
        Put it back
      </button>
      {silent ? <span className="note">no answer came; it is off the list as before</span> : null}
    </>
  );
};

/** Car lines that were taken off the list: nothing of them is lost, cars that name them still open. */
export const OffListRows = ({ lines }: { readonly lines: readonly FamilyLine[] }) => (
  <details className="off-list">
    <summary>Taken off the list: {lines.length}</summary>
    <ul>
      {lines.map((line) => (
        <li key={line.id} className="off-list-row">
          <Link to="/families/$familyId" params={{ familyId: line.id }}>
            {line.name}
          </Link>
          <PutBack line={line} />
        </li>
      ))}
    </ul>
  </details>
);
