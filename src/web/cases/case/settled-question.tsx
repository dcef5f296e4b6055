import { countingLooks } from "#casework";
import { Segments } from "../fields/segments.tsx";
import { type Case, useCase } from "./case-context.tsx";

/** Whether the car stood settled when its heights were read. */
export const Settled = () => {
  const { visit, change } = useCase();
  return (
    <Segments
      label="Settled on its wheels"
      options={[
        { value: "yes", words: "rolled and bounced" },
        { value: "no", words: "not settled" },
      ]}
      value={visit.settled === null ? null : visit.settled ? "yes" : "no"}
      onChange={(value) =>
        change("visit", (body) => ({ ...(body ?? visit), settled: value === null ? null : value === "yes" }))
      }
    />
  );
};

/** True where heights were read and nobody has said on what the car stood. */
export const isSettledOpen = ({ visit, looks }: Pick<Case, "visit" | "looks">): boolean =>
  visit.settled === null &&
  countingLooks(looks).some(({ content }) => content.kind === "reading" && content.quantity === "ride-height");

/** Asks for the word on settled wheels, on whichever page of the case somebody has gone to without it. */
export const SettledQuestion = () => {
  const held = useCase();
  return isSettledOpen(held) ? (
    <div className="notice-line settled-question">
      <p className="notice-words">
        <strong>Heights were read, and nobody has said whether the car had been rolled and bounced.</strong> They are
        not judged until somebody does.
      </p>
      <Settled />
    </div>
  ) : null;
};
