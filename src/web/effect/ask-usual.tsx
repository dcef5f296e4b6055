import { Link } from "@tanstack/react-router";

/** The way back from a condition that cannot be computed: forces, travel and rack as they are asked under usually. */
export const AskUsual = () => (
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
