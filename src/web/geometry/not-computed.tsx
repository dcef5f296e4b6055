import type { Finding } from "#contract";
import { AskUsual } from "../effect/ask-usual.tsx";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { FindingsList } from "../shell/findings-list.tsx";

/** What stands in place of the drawing where the question cannot be computed: what came, the range, and a way back. */
export const NotComputed = ({ findings }: { readonly findings: readonly Finding[] }) => (
  <div className="not-computed">
    <h2 className="heading">Nothing is drawn: this cannot be computed</h2>
    <FindingsList findings={findings} nameOf={conditionPathWords} />
    <AskUsual findings={findings} />
  </div>
);
