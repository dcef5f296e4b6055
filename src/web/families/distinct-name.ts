const same = (one: string, other: string): boolean =>
  one.trim().toLocaleLowerCase() === other.trim().toLocaleLowerCase();

/** True where one of these names is this one, capitals and outer spaces aside. */
export const isTaken = (name: string, taken: readonly string[]): boolean => taken.some((other) => same(name, other));

/** The name itself where nobody has it, else with the first number behind it that nobody has. */
export const distinctName = (name: string, taken: readonly string[]): string => {
  if (!isTaken(name, taken)) return name;
  const stem = name.replace(/ \d+$/, "");
  for (let number = 2; ; number++) if (!isTaken(`${stem} ${number}`, taken)) return `${stem} ${number}`;
};
