/* The same positions in C: the same errors, gradients, elimination and exponential step, written for one knuckle on five
   links. Reads corners and travels from standard input, prints nanoseconds of processor time per position, warm and cold,
   each the median of the rounds, and the sum of all heights and turns so that the answers can be held together. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { N = 6, LINKS = 5, MOST = 64, TRAVELS = 1024 };
typedef struct { double inner[LINKS][3], arm[LINKS][3], length[LINKS], centre[3]; } Corner;
typedef struct { double t[3], r[9]; } Pose;

static double assemble(const Corner *c, const Pose *p, double travel, double a[N * N], double b[N]) {
  double worst = 0;
  for (int i = 0; i < LINKS; i++) {
    const double *q = c->arm[i];
    double r[3], d[3];
    for (int k = 0; k < 3; k++) r[k] = p->r[3 * k] * q[0] + p->r[3 * k + 1] * q[1] + p->r[3 * k + 2] * q[2];
    for (int k = 0; k < 3; k++) d[k] = c->centre[k] + p->t[k] + r[k] - c->inner[i][k];
    double length = sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
    double u[3] = {d[0] / length, d[1] / length, d[2] / length};
    double *row = a + N * i;
    row[0] = u[0]; row[1] = u[1]; row[2] = u[2];
    row[3] = r[1] * u[2] - r[2] * u[1];
    row[4] = r[2] * u[0] - r[0] * u[2];
    row[5] = r[0] * u[1] - r[1] * u[0];
    b[i] = c->length[i] - length;
    if (fabs(b[i]) > worst) worst = fabs(b[i]);
  }
  double *drive = a + N * LINKS;
  memset(drive, 0, N * sizeof(double));
  drive[2] = 1;
  b[LINKS] = travel - p->t[2];
  return fabs(b[LINKS]) > worst ? fabs(b[LINKS]) : worst;
}

static int factorise(double a[N * N], int pivots[N]) {
  for (int k = 0; k < N; k++) {
    int p = k;
    for (int i = k + 1; i < N; i++) if (fabs(a[i * N + k]) > fabs(a[p * N + k])) p = i;
    pivots[k] = p;
    if (a[p * N + k] == 0) return 0;
    if (p != k) for (int j = 0; j < N; j++) { double t = a[k * N + j]; a[k * N + j] = a[p * N + j]; a[p * N + j] = t; }
    for (int i = k + 1; i < N; i++) {
      double m = a[i * N + k] / a[k * N + k];
      a[i * N + k] = m;
      for (int j = k + 1; j < N; j++) a[i * N + j] -= m * a[k * N + j];
    }
  }
  return 1;
}

static void solve(const double a[N * N], const int pivots[N], double b[N]) {
  for (int k = 0; k < N; k++) { double t = b[k]; b[k] = b[pivots[k]]; b[pivots[k]] = t; }
  for (int i = 1; i < N; i++) for (int j = 0; j < i; j++) b[i] -= a[i * N + j] * b[j];
  for (int i = N - 1; i >= 0; i--) {
    for (int j = i + 1; j < N; j++) b[i] -= a[i * N + j] * b[j];
    b[i] /= a[i * N + i];
  }
}

static void advance(Pose *p, const double s[N]) {
  for (int k = 0; k < 3; k++) p->t[k] += s[k];
  double x = s[3], y = s[4], z = s[5], a2 = x * x + y * y + z * z, a = sqrt(a2);
  double f = a < 1e-4 ? 1 - a2 / 6 : sin(a) / a, g = a < 1e-4 ? 0.5 - a2 / 24 : (1 - cos(a)) / a2;
  double m[9] = {1 - g * (y * y + z * z), g * x * y - f * z, g * x * z + f * y,
                 g * x * y + f * z, 1 - g * (x * x + z * z), g * y * z - f * x,
                 g * x * z - f * y, g * y * z + f * x, 1 - g * (x * x + y * y)};
  for (int j = 0; j < 3; j++) {
    double u = p->r[j], v = p->r[3 + j], w = p->r[6 + j];
    for (int i = 0; i < 3; i++) p->r[3 * i + j] = m[3 * i] * u + m[3 * i + 1] * v + m[3 * i + 2] * w;
  }
}

static void orthonormalise(Pose *p) {
  double *r = p->r, a = 1 / sqrt(r[0] * r[0] + r[1] * r[1] + r[2] * r[2]);
  for (int k = 0; k < 3; k++) r[k] *= a;
  double d = r[0] * r[3] + r[1] * r[4] + r[2] * r[5];
  for (int k = 0; k < 3; k++) r[3 + k] -= d * r[k];
  a = 1 / sqrt(r[3] * r[3] + r[4] * r[4] + r[5] * r[5]);
  for (int k = 0; k < 3; k++) r[3 + k] *= a;
  r[6] = r[1] * r[5] - r[2] * r[4]; r[7] = r[2] * r[3] - r[0] * r[5]; r[8] = r[0] * r[4] - r[1] * r[3];
}

static void position(const Corner *c, Pose *p, double travel) {
  double a[N * N], b[N], last = INFINITY;
  int pivots[N];
  for (int iteration = 0;; iteration++) {
    double residual = assemble(c, p, travel, a, b);
    if (!factorise(a, pivots)) return;
    if (residual <= 1e-15 || (residual >= 0.5 * last && residual <= 1e-12) || iteration >= 25) { orthonormalise(p); return; }
    last = residual;
    solve(a, pivots, b);
    advance(p, b);
  }
}

static int ascending(const void *a, const void *b) { double d = *(double *)a - *(double *)b; return (d > 0) - (d < 0); }

int main(void) {
  static Corner corners[MOST];
  static double travels[TRAVELS], times[99];
  int count, steps, repeats, rounds;
  if (scanf("%d %d %d %d", &count, &steps, &repeats, &rounds) != 4 || count > MOST || steps > TRAVELS || rounds > 99) return 1;
  for (int n = 0; n < count; n++) {
    Corner *c = corners + n;
    for (int k = 0; k < 3; k++) if (scanf("%lf", c->centre + k) != 1) return 1;
    for (int i = 0; i < LINKS; i++) {
      double square = 0;
      for (int k = 0; k < 3; k++) if (scanf("%lf", &c->inner[i][k]) != 1) return 1;
      for (int k = 0; k < 3; k++) {
        double outer;
        if (scanf("%lf", &outer) != 1) return 1;
        square += (outer - c->inner[i][k]) * (outer - c->inner[i][k]);
        c->arm[i][k] = outer - c->centre[k];
      }
      c->length[i] = sqrt(square);
    }
  }
  for (int i = 0; i < steps; i++) if (scanf("%lf", travels + i) != 1) return 1;
  const Pose start = {{0, 0, 0}, {1, 0, 0, 0, 1, 0, 0, 0, 1}};
  double sum = 0;
  for (int cold = 0; cold < 2; cold++) {
    for (int round = -1; round < rounds; round++) {
      clock_t before = clock();
      for (int n = 0; n < count; n++) {
        Pose p = start;
        for (int repeat = 0; repeat < repeats; repeat++)
          for (int i = 0; i < steps; i++) {
            if (cold) p = start;
            position(corners + n, &p, travels[i]);
            if (round < 0 && repeat == 0) sum += p.t[0] + p.t[1] + p.r[1] + p.r[5];
          }
      }
      if (round >= 0) times[round] = 1e9 * (double)(clock() - before) / CLOCKS_PER_SEC / ((double)count * repeats * steps);
    }
    qsort(times, (size_t)rounds, sizeof(double), ascending);
    printf("%.17g\n", times[rounds / 2]);
  }
  printf("%.17g\n", sum);
  return 0;
}
