/* A linear solver: L D L' row by row within the envelope, as `linear_solver = "skyline"` in [solve]. Simple, slow for
 * wide envelopes, exact for pivots of either sign as long as none vanishes (Golub & Van Loan, Matrix Computations,
 * sec. 4.1 and 4.3).
 *
 *     cc -std=c11 -O2 -fPIC -shared -o skyline_solver.so skyline_solver.c $(pkg-config --cflags bedbow) -lm
 *     bedbow list --prove skyline --plugin ./skyline_solver.so
 */
#include <bedbow/plugin.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

typedef struct skyline {
  size_t order;
  size_t* first; /* first column of each row */
  size_t* start; /* position of that column in `values`, per row */
  double* values;
  double* pivots;
} skyline;

static void release(void* factor) {
  skyline* s = factor;
  if (s == NULL) return;
  free(s->first);
  free(s->start);
  free(s->values);
  free(s->pivots);
  free(s);
}

static skyline* lay_out(const bedbow_matrix* m) {
  const size_t n = m->order;
  skyline* s = calloc(1, sizeof *s);
  if (s == NULL) return NULL;
  s->order = n;
  s->first = malloc((n + 1) * sizeof *s->first);
  s->start = malloc((n + 1) * sizeof *s->start);
  s->pivots = malloc((n + 1) * sizeof *s->pivots);
  if (s->first == NULL || s->start == NULL || s->pivots == NULL) return s;
  for (size_t i = 0; i < n; ++i) s->first[i] = i;
  for (size_t j = n; j-- > 0;)
    for (int32_t k = m->starts[j]; k < m->starts[j + 1]; ++k) s->first[m->rows[k]] = j;
  s->start[0] = 0;
  for (size_t i = 0; i < n; ++i) s->start[i + 1] = s->start[i] + (i + 1 - s->first[i]);
  s->values = calloc(s->start[n] + 1, sizeof *s->values);
  if (s->values == NULL) return s;
  for (size_t j = 0; j < n; ++j)
    for (int32_t k = m->starts[j]; k < m->starts[j + 1]; ++k) {
      const size_t i = (size_t)m->rows[k];
      s->values[s->start[i] + (j - s->first[i])] = m->values[k];
    }
  return s;
}

/* One row of L, and its pivot. */
static double eliminate(skyline* s, size_t i) {
  double* row = s->values + s->start[i];
  const size_t f = s->first[i];
  for (size_t j = f; j < i; ++j) {
    const double* other = s->values + s->start[j];
    const size_t g = s->first[j], from = f > g ? f : g;
    for (size_t k = from; k < j; ++k) row[j - f] -= row[k - f] * other[k - g];
  }
  double pivot = row[i - f];
  for (size_t j = f; j < i; ++j) {
    const double l = row[j - f] / s->pivots[j];
    pivot -= l * row[j - f];
    row[j - f] = l;
  }
  return pivot;
}

static int factor(const bedbow_matrix* m, void** out, int64_t* zero_pivot, char* message, size_t message_size) {
  skyline* s = lay_out(m);
  if (s == NULL || s->first == NULL || s->start == NULL || s->pivots == NULL || s->values == NULL) {
    release(s);
    snprintf(message, message_size, "no memory for the envelope");
    return 1;
  }
  for (size_t i = 0; i < s->order; ++i) {
    const double diagonal = s->values[s->start[i] + (i - s->first[i])];
    const double pivot = eliminate(s, i), least = 8 * 2.2e-16 * fabs(diagonal);
    if (!(m->positive ? pivot > least : fabs(pivot) > least)) {
      *zero_pivot = (int64_t)i;
      release(s);
      return 0;
    }
    s->pivots[i] = pivot;
  }
  *out = s;
  return 0;
}

static int solve(const void* factor, double* b, size_t order, size_t columns, char* message, size_t message_size) {
  const skyline* s = factor;
  (void)message;
  (void)message_size;
  for (size_t c = 0; c < columns; ++c, b += order) {
    for (size_t i = 0; i < order; ++i)
      for (size_t j = s->first[i]; j < i; ++j) b[i] -= s->values[s->start[i] + (j - s->first[i])] * b[j];
    for (size_t i = 0; i < order; ++i) b[i] /= s->pivots[i];
    for (size_t i = order; i-- > 0;)
      for (size_t j = s->first[i]; j < i; ++j) b[j] -= s->values[s->start[i] + (j - s->first[i])] * b[i];
  }
  return 0;
}

static int negative_pivots(const void* factor, int64_t* count, char* message, size_t message_size) {
  const skyline* s = factor;
  (void)message;
  (void)message_size;
  *count = 0;
  for (size_t i = 0; i < s->order; ++i) *count += s->pivots[i] < 0;
  return 0;
}

static const bedbow_linear_solver solver = {sizeof solver, factor, solve, negative_pivots, release};
static const bedbow_entry entry = {BEDBOW_PLUGIN_INTERFACE,
                                   sizeof entry,
                                   "linear solver",
                                   "skyline",
                                   "1.0",
                                   "L D L' row by row within the envelope",
                                   "Golub & Van Loan, Matrix Computations, sec. 4.3",
                                   &solver};

const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : NULL;
}
