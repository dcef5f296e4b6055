import { Link } from "@tanstack/react-router";
import type { Finding } from "#contract";

/**
 * The way back from a condition that cannot be computed: forces, travel and rack as they are asked under usually. Nothing
 * where only what is looked at is objected to.
 */
export const AskUsual = ({ findings }: { readonly findings: readonly Finding[] }) =>
  findings.every(({ path }) => path.startsWith("fault.")) ? null : (
    <p className="margin-links">
      <Link
        to="."
        search={({
          rise_mm: _rise,
          rack_mm: _rack,
          braking_n: _braking,
          lateral_n: _lateral,
          drive_n: _drive,
          ...last
        }) => last}
      >
        Back to 2 kN of braking at ride height
      </Link>
    </p>
  );
