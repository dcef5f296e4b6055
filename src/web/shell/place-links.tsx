import { Link } from "@tanstack/react-router";

const PLACES = [
  { to: "/", name: "Today" },
  { to: "/families", name: "Families" },
  { to: "/counter", name: "Counter" },
  { to: "/bench", name: "Bench" },
  { to: "/tally", name: "Tally" },
  { to: "/reference", name: "Reference" },
] as const;

export type PlaceName = (typeof PLACES)[number]["name"];

/** The six places that are always there. */
export const PlaceLinks = ({ now }: { readonly now: PlaceName }) => (
  <nav aria-label="Places" className="places">
    {PLACES.map(({ to, name }) => (
      <Link key={to} to={to} className="place" aria-current={name === now ? "page" : undefined}>
        {name}
      </Link>
    ))}
  </nav>
);
