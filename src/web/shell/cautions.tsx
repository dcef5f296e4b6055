/** What can hurt someone, beside what was computed; never left out. */
export const Cautions = ({ cautions }: { readonly cautions: readonly string[] }) => (
  <ul className="cautions" aria-label="Cautions">
    {cautions.map((caution) => (
      <li key={caution}>{caution}</li>
    ))}
  </ul>
);
