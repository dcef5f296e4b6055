import { Link } from "@tanstack/react-router";
import type { Appraisal } from "#casework";
import { MarginSection } from "../../shell/margin-section.tsx";
import { PrintOwnersPage } from "../appraisal/print-owners-page.tsx";
import { timeWords } from "../appraisal/time-words.ts";
import { type AppraisedCase, useAppraisal } from "../appraisal/use-appraisal.ts";
import { WaitingPage } from "../appraisal/waiting-page.tsx";
import { momentNow } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { AsLeftTable } from "./as-left-table.tsx";
import { GateRows } from "./gate-rows.tsx";
import { emptyHandOver, holdAgain, passOver, sayTaught, signOver } from "./hand-over-changes.ts";
import { ReceivedBy } from "./received-by.tsx";
import { ReteachRows } from "./reteach-rows.tsx";

/** Who signed, and the press that signs; held while a check is open. */
const Signature = ({ of: { held }, appraisal }: { readonly of: AppraisedCase; readonly appraisal: Appraisal }) => {
  const { handOver, change, who, visit } = held;
  const open = appraisal.gates.filter((g) => g.state === "open");
  const sign = () => {
    change("hand-over", (doc) => signOver(doc, who, momentNow()));
    change("visit", (body) => {
      const standing = body ?? visit;
      const done = standing.done.includes("hand-over") ? standing.done : [...standing.done, "hand-over" as const];
      return { ...standing, done, closed: true };
    });
  };
  if (handOver?.signedBy != null)
    return (
      <MarginSection title="Signed">
        {handOver.signedBy}
        {handOver.signedAt === null ? "" : `, ${timeWords(handOver.signedAt)}`}. The visit is closed.
      </MarginSection>
    );
  return (
    <>
      <h2 className="heading">
        {open.length === 0
          ? "Nothing holds the car"
          : `${open.length} ${open.length === 1 ? "check holds" : "checks hold"} the car`}
      </h2>
      <p className="margin-lead">
        {open.length === 0
          ? "The car can be handed over. Your name and the time are written down."
          : "Meet each check, or pass it over with a reason; who passed it over stands on record."}
      </p>
      <p className="margin-links">
        <button type="button" className="press" disabled={open.length > 0} onClick={sign}>
          Sign the hand-over
        </button>
      </p>
    </>
  );
};

const HandOverSheet = ({ of, appraisal }: { readonly of: AppraisedCase; readonly appraisal: Appraisal }) => {
  const { change, who, visitId, handOver } = of.held;
  return (
    <CaseSheet
      stage="hand-over"
      waiting={of.waiting}
      marks={appraisal.stages}
      margin={
        <>
          <Signature of={of} appraisal={appraisal} />
          <ReceivedBy
            value={handOver?.receivedBy ?? null}
            onChange={(receivedBy) => change("hand-over", (doc) => ({ ...(doc ?? emptyHandOver), receivedBy }))}
          />
          <MarginSection title="For the owner">
            One page: each remedy on its place, number against limit, plain sentence, consequence, price.
          </MarginSection>
          <PrintOwnersPage visitId={visitId} />
        </>
      }
    >
      <div className="hand-page">
        <section>
          <h2>Checks</h2>
          <GateRows
            gates={appraisal.gates}
            onPass={(gate, reason) =>
              change("hand-over", (doc) => passOver(doc, { gate, reason, by: who, at: momentNow() }))
            }
            onHold={(gate) => change("hand-over", (doc) => holdAgain(doc, gate))}
          />
        </section>
        <section>
          <h2>Taught anew, aimed anew</h2>
          <ReteachRows
            items={appraisal.reteach}
            onSay={(item, state) => change("hand-over", (doc) => sayTaught(doc, { item, state, by: who }))}
          />
        </section>
        <section>
          <h2>As left beside as found</h2>
          <AsLeftTable rows={appraisal.asLeft} axles={appraisal.axlesAsLeft} />
          <p className="label found-rest">
            A reading taken again after the owner agreed or the first step was signed counts as left.{" "}
            <Link to="/cases/$visit/readings" params={{ visit: visitId }}>
              Read again
            </Link>
          </p>
        </section>
      </div>
    </CaseSheet>
  );
};

/** Hand-over: what holds the car and why, what is taught anew, as left beside as found, who signed, the owner's page. */
export const HandOverPage = () => {
  const of = useAppraisal();
  if (of.appraisal === null) return <WaitingPage stage="hand-over" of={of} />;
  return <HandOverSheet of={of} appraisal={of.appraisal} />;
};
