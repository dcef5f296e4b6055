/**
 * Flavoured numbers: a plain number fits every quantity, but a length is never accepted where a force is needed.
 * Inside the program everything is SI and radians; the unit stands in the type, not in the name.
 */
declare const unit: unique symbol;
export type Quantity<U extends string> = number & { readonly [unit]?: U };

export type Metres = Quantity<"m">;
export type Radians = Quantity<"rad">;
export type Newtons = Quantity<"N">;
export type NewtonMetres = Quantity<"N m">;
export type NewtonsPerMetre = Quantity<"N/m">;
export type Kilograms = Quantity<"kg">;
export type Pascals = Quantity<"Pa">;
export type Hertz = Quantity<"Hz">;
export type MetresPerSecond = Quantity<"m/s">;
export type NewtonSecondsPerMetre = Quantity<"N s/m">;
export type NewtonMetresPerRadian = Quantity<"N m/rad">;
/** A share of a whole, 0 to 1. */
export type Share = Quantity<"1">;
