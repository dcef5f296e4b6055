import { useId, useState } from "react";
import type { Gate } from "#casework";

const STATE_WORDS: Readonly<Record<Gate["state"], string>> = {
  met: "met",
  open: "holds the car",
  "passed-over": "passed over",
  "does-not-apply": "does not apply",
  "not-on-file": "nothing on file",
};

interface GateRowsProps {
  readonly gates: readonly Gate[];
  readonly onPass: (gate: string, reason: string) => void;
  readonly onHold: (gate: string) => void;
}

/** Why a check is passed over; without a reason it is not. */
const PassForm = ({ gate, onPass, onClose }: { gate: Gate; onPass: (reason: string) => void; onClose: () => void }) => {
  const id = useId();
  const [reason, setReason] = useState("");
  return (
    <form
      className="pass-form field"
      onSubmit={(event) => {
        event.preventDefault();
        if (reason.trim() === "") return;
        onPass(reason.trim());
        onClose();
      }}
    >
      <label htmlFor={id}>Why is this passed over: {gate.label.toLowerCase()}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={reason}
        onChange={(event) => setReason(event.target.value)}
      />
      <span className="pass-buttons">
        <button type="submit" className="press" disabled={reason.trim() === ""}>
          Pass over with this reason
        </button>
        <button type="button" className="link" onClick={onClose}>
          Leave it open
        </button>
      </span>
    </form>
  );
};

const GateSign = ({ state }: { readonly state: Gate["state"] }) => (
  <svg viewBox="-10 -10 20 20" width="20" height="20" aria-hidden="true" className="gate-sign" data-state={state}>
    {state === "met" ? (
      <path d="M-6 0l4.5 5L7-6" />
    ) : state === "does-not-apply" || state === "not-on-file" ? (
      <path d="M-2 0H2" />
    ) : state === "open" ? (
      <path d="M-7 0H7" />
    ) : (
      <path d="M-7 4C-3-6 3-6 7 4" />
    )}
  </svg>
);

/** Checks of the hand-over: what is met, what holds the car and why, what was passed over by whom. */
export const GateRows = ({ gates, onPass, onHold }: GateRowsProps) => {
  const [asked, setAsked] = useState<string | null>(null);
  return (
    <ul className="gate-rows">
      {gates.map((gate) => (
        <li key={gate.id} className="gate-row" data-state={gate.state}>
          <GateSign state={gate.state} />
          <span className="found-what">
            <span className="found-name">{gate.label}</span>
            {gate.why === "" ? null : <span className="label">{gate.why}</span>}
          </span>
          <span className="label gate-state">{STATE_WORDS[gate.state]}</span>
          <span className="gate-act">
            {gate.state === "open" ? (
              <button
                type="button"
                className="link"
                onClick={() => setAsked(gate.id)}
                aria-label={`Pass over: ${gate.label}`}
              >
                Pass over
              </button>
            ) : null}
            {gate.state === "passed-over" ? (
              <button
                type="button"
                className="link"
                onClick={() => onHold(gate.id)}
                aria-label={`Hold again: ${gate.label}`}
              >
                Hold again
              </button>
            ) : null}
          </span>
          {asked === gate.id && gate.state === "open" ? (
            <PassForm gate={gate} onPass={(reason) => onPass(gate.id, reason)} onClose={() => setAsked(null)} />
          ) : null}
        </li>
      ))}
    </ul>
  );
};
