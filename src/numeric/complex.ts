/** A complex number. */
export interface Complex {
  readonly real: number;
  readonly imaginary: number;
}

export const complex = (real: number, imaginary = 0): Complex => ({ real, imaginary });

export const addComplex = (a: Complex, b: Complex): Complex => complex(a.real + b.real, a.imaginary + b.imaginary);

export const scaleComplex = (a: Complex, factor: number): Complex => complex(a.real * factor, a.imaginary * factor);

export const multiplyComplex = (a: Complex, b: Complex): Complex =>
  complex(a.real * b.real - a.imaginary * b.imaginary, a.real * b.imaginary + a.imaginary * b.real);

/** a over b; not finite where b is nought. */
export function divideComplex(a: Complex, b: Complex): Complex {
  const size = b.real * b.real + b.imaginary * b.imaginary;
  return complex(
    (a.real * b.real + a.imaginary * b.imaginary) / size,
    (a.imaginary * b.real - a.real * b.imaginary) / size,
  );
}

/** Absolute value. */
export const sizeOfComplex = (a: Complex): number => Math.hypot(a.real, a.imaginary);
