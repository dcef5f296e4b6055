/** What a car is called on every page until somebody names it; no field ever holds it. */
export const UNNAMED_CAR = "Car not named yet";
