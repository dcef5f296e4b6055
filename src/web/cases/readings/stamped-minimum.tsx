import { metresFromMm } from "#quantity";
import { parseTypedQuantity, typedQuantityTrouble } from "../../number/parse-typed-quantity.ts";
import { useCase } from "../case/case-context.tsx";
import { KeptField } from "../fields/kept-field.tsx";
import { useRefusedText } from "../fields/refused-text.ts";

/** Between what the minimum stamped on a disc lies, mm (from memory). */
const BOUNDS = { low: 3, high: 45 } as const;

const NONE = { front: null, rear: null } as const;

const shown = (length: number | null): string => (length === null ? "" : String(Number((1000 * length).toFixed(3))));

/** What was typed, mm (null: nothing), or what keeps it from being a thickness. */
const parseStamped = (text: string): { readonly mm: number | null } | { readonly trouble: string } => {
  const read = parseTypedQuantity(text, "mm", BOUNDS);
  if (read.kind === "empty") return { mm: null };
  if (read.kind !== "number") return { trouble: typedQuantityTrouble(text, BOUNDS, "mm") ?? "give a number, in mm" };
  return read.value >= BOUNDS.low && read.value <= BOUNDS.high
    ? { mm: read.value }
    : { trouble: `“${text.trim()}” came; needed is ${BOUNDS.low} to ${BOUNDS.high} mm` };
};

const StampedField = ({ axle }: { readonly axle: "front" | "rear" }) => {
  const { visit, visitId, pastVisit, change } = useCase();
  const [refused, setRefused] = useRefusedText(`${visitId}.stamped.${axle}`);
  const read = parseStamped(refused ?? "");
  const trouble = "trouble" in read ? read.trouble : null;
  const before = pastVisit?.discMinimum?.[axle] ?? null;
  return (
    <KeptField
      label={`Stamped minimum, ${axle}`}
      unit="mm"
      numeric
      value={refused ?? shown(visit.discMinimum?.[axle] ?? null)}
      wrong={trouble !== null}
      note={trouble ?? (before === null ? "as it stands on the disc" : `last visit ${shown(before)} mm`)}
      onKeep={(text) => {
        const typed = parseStamped(text);
        setRefused("trouble" in typed ? text : null);
        if ("trouble" in typed) return;
        const length = typed.mm === null ? null : metresFromMm(typed.mm);
        change("visit", (body) => ({
          ...(body ?? visit),
          discMinimum: { ...NONE, ...(body ?? visit).discMinimum, [axle]: length },
        }));
      }}
    />
  );
};

/** The minimum stamped on the discs: their maker's limit, also on a car whose line has none on file. */
export const StampedMinimum = () => (
  <div className="stamped-minimum">
    <StampedField axle="front" />
    <StampedField axle="rear" />
  </div>
);
