/* The same positions in C: the same errors, gradients, order and elimination, the same reuse of factors and the same step,
   written for one knuckle on five links. Reads corners and travels from standard input, prints nanoseconds of processor time per position, warm and cold,
   each the median of the rounds, and the sum of all heights and turns so that the answers can be held together. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { N = 5, LINKS = 5, MOST = 64, TRAVELS = 1024 };
typedef struct { double inner[LINKS][3], arm[LINKS][3], length[LINKS], centre[3], pivots[N]; int rows[N], columns[N]; } Corner;
typedef struct { double t[3], r[9]; } Pose;

/* Errors and gradients of the links at a pose; returns the largest error. */
static double evaluate(const Corner *c, const Pose *p, double rows[LINKS][6], double errors[LINKS]) {
  double worst = 0;
  for (int i = 0; i < LINKS; i++) {
    const double *q = c->arm[i];
    double r[3], d[3];
    for (int k = 0; k < 3; k++) r[k] = p->r[3 * k] * q[0] + p->r[3 * k + 1] * q[1] + p->r[3 * k + 2] * q[2];
    for (int k = 0; k < 3; k++) d[k] = c->centre[k] + p->t[k] + r[k] - c->inner[i][k];
    double length = sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
    double u[3] = {d[0] / length, d[1] / length, d[2] / length};
    double *row = rows[i];
    row[0] = u[0]; row[1] = u[1]; row[2] = u[2];
    row[3] = r[1] * u[2] - r[2] * u[1];
    row[4] = r[2] * u[0] - r[0] * u[2];
    row[5] = r[0] * u[1] - r[1] * u[0];
    errors[i] = c->length[i] - length;
    if (fabs(errors[i]) > worst) worst = fabs(errors[i]);
  }
  return worst;
}

/* Complete pivoting: the order of elimination, and how large the pivots are. */
static void choose_order(Corner *c, double rows[LINKS][6]) {
  double a[LINKS][6];
  memcpy(a, rows, sizeof a);
  int row[N] = {0, 1, 2, 3, 4}, column[N] = {0, 1, 3, 4, 5};
  for (int k = 0; k < N; k++) {
    int bi = k, bj = k;
    for (int i = k; i < N; i++) for (int j = k; j < N; j++)
      if (fabs(a[row[i]][column[j]]) > fabs(a[row[bi]][column[bj]])) { bi = i; bj = j; }
    int t = row[k]; row[k] = row[bi]; row[bi] = t;
    t = column[k]; column[k] = column[bj]; column[bj] = t;
    double pivot = a[row[k]][column[k]];
    c->pivots[k] = fabs(pivot);
    for (int i = k + 1; i < N; i++) {
      double m = a[row[i]][column[k]] / pivot;
      for (int j = k; j < N; j++) a[row[i]][column[j]] -= m * a[row[k]][column[j]];
    }
  }
  memcpy(c->rows, row, sizeof row);
  memcpy(c->columns, column, sizeof column);
}

/* Elimination in the order chosen; the reciprocal pivots stand on the diagonal. Returns 0 where a pivot is worn. */
static int factorise(const Corner *c, double rows[LINKS][6], double a[N][N]) {
  for (int i = 0; i < N; i++) for (int j = 0; j < N; j++) a[i][j] = rows[c->rows[i]][c->columns[j]];
  int good = 1;
  for (int k = 0; k < N; k++) {
    if (k < N - 1 && fabs(a[k][k]) < 0.02 * c->pivots[k]) good = 0;
    a[k][k] = 1 / a[k][k];
    for (int i = k + 1; i < N; i++) {
      double m = a[i][k] * a[k][k];
      a[i][k] = m;
      for (int j = k + 1; j < N; j++) a[i][j] -= m * a[k][j];
    }
  }
  return good && isfinite(a[N - 1][N - 1]);
}

static void substitute(const Corner *c, double a[N][N], double rows[LINKS][6], const double errors[LINKS], double off, double s[6]) {
  double b[N];
  for (int i = 0; i < N; i++) b[i] = errors[c->rows[i]] - off * rows[c->rows[i]][2];
  for (int i = 1; i < N; i++) for (int j = 0; j < i; j++) b[i] -= a[i][j] * b[j];
  for (int i = N - 1; i >= 0; i--) {
    for (int j = i + 1; j < N; j++) b[i] -= a[i][j] * b[j];
    b[i] *= a[i][i];
  }
  for (int i = 0; i < N; i++) s[c->columns[i]] = b[i];
  s[2] = off;
}

static void advance(Pose *p, const double s[6]) {
  for (int k = 0; k < 3; k++) p->t[k] += s[k];
  double x = s[3], y = s[4], z = s[5], a2 = x * x + y * y + z * z;
  double f = 1 - a2 / 6 * (1 - a2 / 20 * (1 - a2 / 42 * (1 - a2 / 72)));
  double g = 0.5 * (1 - a2 / 12 * (1 - a2 / 30 * (1 - a2 / 56 * (1 - a2 / 90))));
  if (a2 > 0.01) { double a = sqrt(a2); f = sin(a) / a; g = (1 - cos(a)) / a2; }
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

/* Newton from the pose given; old factors serve again where the error that makes lies below rounding. */
static void position(const Corner *c, Pose *p, double travel) {
  double rows[LINKS][6], errors[LINKS], a[N][N], s[6], last = INFINITY;
  for (int iteration = 0;; iteration++) {
    double residual = evaluate(c, p, rows, errors), off = travel - p->t[2];
    if (fabs(off) > residual) residual = fabs(off);
    if (residual <= 1e-15 || (residual >= 0.5 * last && residual <= 1e-12)) { orthonormalise(p); return; }
    if (iteration >= 25) return;
    if (!(iteration > 0 && 4 * residual * residual <= 1e-15 * last) && !factorise(c, rows, a)) return;
    last = residual;
    substitute(c, a, rows, errors, off, s);
    advance(p, s);
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
    const Pose design = {{0, 0, 0}, {1, 0, 0, 0, 1, 0, 0, 0, 1}};
    double rows[LINKS][6], errors[LINKS];
    evaluate(c, &design, rows, errors);
    choose_order(c, rows);
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
