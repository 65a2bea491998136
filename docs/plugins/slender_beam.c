/* An element: the slender beam of Euler and Bernoulli, without shear flexibility, as `element = "slender beam"` of a
 * bar. For sections whose shear centre is the centroid and whose axes are principal. It provides all that an element
 * can provide: stiffness, mass, geometric stiffness and loads, each from the same shape functions, cubic across and
 * linear along (Przemieniecki 1968, ch. 5, 11 and 15).
 *
 *     cc -std=c11 -O2 -fPIC -shared -o slender_beam.so slender_beam.c $(pkg-config --cflags bedbow) -lm
 *     bedbow list --prove "slender beam" --plugin ./slender_beam.so
 */
#include <bedbow/plugin.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { E, G, density, A, Iyy, Izz, J, parameters };
static const bedbow_parameter wanted[parameters] = {
    {"E", "Pa", "Young's modulus", 210e9},
    {"G", "Pa", "shear modulus", 81e9},
    {"density", "kg/m^3", "mass per volume", 7850},
    {"A", "m^2", "area", 1.2e-3},
    {"Iyy", "m^4", "second moment about the width's axis", 3.6e-7},
    {"Izz", "m^4", "second moment about the height's axis", 4e-8},
    {"J", "m^4", "torsion constant", 1.26e-7},
};

/* Gauss-Legendre, four points on [0, 1]: exact to degree seven. */
static const double at[4] = {0.06943184420297371, 0.33000947820757187, 0.66999052179242813, 0.93056815579702629};
static const double weight[4] = {0.17392742256872693, 0.32607257743127307, 0.32607257743127307, 0.17392742256872693};

/* Shape functions at a point of the axis, in the beam's axes: displacement and rotation (u v w rx ry rz), and
 * their slopes (du ... drz). */
enum { u, v, w, rx, ry, rz, du, dv, dw, drx, dry, drz, quantities };
typedef double Shapes[quantities][12];

static void cubic(Shapes n, double l, double s, int move, int slope, int bend, int turn, double sign) {
  const double t = 1 - s;
  /* The first node's displacement and rotation, then the second's. */
  const double value[4] = {t * t * (1 + 2 * s), l * s * t * t, s * s * (1 + 2 * t), -l * s * s * t};
  const double first[4] = {-6 * s * t / l, t * (t - 2 * s), 6 * s * t / l, s * (s - 2 * t)};
  const double second[4] = {(12 * s - 6) / (l * l), (6 * s - 4) / l, (6 - 12 * s) / (l * l), (6 * s - 2) / l};
  for (int i = 0; i < 4; ++i) {
    const int dof = 6 * (i / 2) + (i % 2 ? turn : move);
    const double by = i % 2 ? sign : 1; /* a rotation about y is the slope towards -z */
    n[move][dof] = by * value[i];
    n[slope][dof] = by * first[i];
    n[turn][dof] = by * sign * first[i];
    n[bend][dof] = by * sign * second[i];
  }
}

static void shapes(Shapes n, double l, double s) {
  memset(n, 0, sizeof(Shapes));
  for (int k = 0; k < 2; ++k) { /* extension and twist: linear */
    const int dof = k ? rx : u, slope = k ? drx : du;
    n[dof][dof] = 1 - s, n[dof][6 + dof] = s;
    n[slope][dof] = -1 / l, n[slope][6 + dof] = 1 / l;
  }
  cubic(n, l, s, v, dv, drz, rz, 1);
  cubic(n, l, s, w, dw, dry, ry, -1);
}

/* k += factor a' b, and its transpose. */
static void pair(double k[12][12], Shapes n, int a, int b, double factor) {
  for (int i = 0; i < 12; ++i)
    for (int j = 0; j < 12; ++j) k[i][j] += factor * (n[a][i] * n[b][j] + n[b][i] * n[a][j]) / (a == b ? 2 : 1);
}

static double length(const bedbow_element_input* in) {
  const double* c = in->corners;
  return sqrt((c[3] - c[0]) * (c[3] - c[0]) + (c[4] - c[1]) * (c[4] - c[1]) + (c[5] - c[2]) * (c[5] - c[2]));
}

static int refuse(const bedbow_element_input* in, size_t capacity, size_t due, char* message, size_t message_size) {
  if (capacity >= due && length(in) > 0) return 0;
  snprintf(message, message_size, "no room, or an element without length");
  return 1;
}

/* Transforms rows and columns, three at a time, from the beam's axes to global ones. */
static void turn_matrix(double k[12][12], const double* axes, double* out, size_t* count) {
  for (int p = 0; p < 4; ++p)
    for (int q = 0; q < 4; ++q)
      for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) {
          double sum = 0;
          for (int a = 0; a < 3; ++a)
            for (int b = 0; b < 3; ++b) sum += axes[3 * a + i] * k[3 * p + a][3 * q + b] * axes[3 * b + j];
          out[12 * (3 * p + i) + 3 * q + j] = sum;
        }
  *count = 144;
}

static int stiffness(const bedbow_element_input* in, double* matrix, size_t capacity, size_t* count, char* message,
                     size_t message_size) {
  const double* p = in->parameters;
  double k[12][12] = {{0}};
  Shapes n;
  if (refuse(in, capacity, 144, message, message_size)) return 1;
  for (int g = 0; g < 4; ++g) {
    const double by = weight[g] * length(in);
    shapes(n, length(in), at[g]);
    pair(k, n, du, du, by * p[E] * p[A]);
    pair(k, n, drx, drx, by * p[G] * p[J]);
    pair(k, n, dry, dry, by * p[E] * p[Iyy]);
    pair(k, n, drz, drz, by * p[E] * p[Izz]);
  }
  turn_matrix(k, in->axes, matrix, count);
  return 0;
}

static int mass(const bedbow_element_input* in, int lumped, double* matrix, size_t capacity, size_t* count,
                char* message, size_t message_size) {
  const double *p = in->parameters, per_length = p[density] * p[A];
  const double rotary[3] = {p[density] * (p[Iyy] + p[Izz]), p[density] * p[Iyy], p[density] * p[Izz]};
  double m[12][12] = {{0}};
  Shapes n;
  if (refuse(in, capacity, 144, message, message_size)) return 1;
  for (int i = 0; lumped && i < 12; ++i)
    m[i][i] = (i % 6 < 3 ? per_length : rotary[i % 3]) * length(in) / 2; /* half of the bar at each node */
  for (int g = 0; !lumped && g < 4; ++g) {
    const double by = weight[g] * length(in);
    shapes(n, length(in), at[g]);
    for (int k = 0; k < 3; ++k) {
      pair(m, n, u + k, u + k, by * per_length);
      pair(m, n, rx + k, rx + k, by * rotary[k]);
    }
  }
  turn_matrix(m, in->axes, matrix, count);
  return 0;
}

/* Work of the section forces on the second-order strains (docs/theory/buckling.md). */
static int geometric(const bedbow_element_input* in, const double* state, size_t state_count, double* matrix,
                     size_t capacity, size_t* count, char* message, size_t message_size) {
  const double *p = in->parameters, l = length(in);
  double k[12][12] = {{0}};
  Shapes n;
  (void)state_count; /* 12 along a line */
  if (refuse(in, capacity, 144, message, message_size)) return 1;
  for (int g = 0; g < 4; ++g) {
    double f[6]; /* N Vy Vz T My Mz here: linear, and the parabola of a changing shear force */
    const double s = at[g], bubble = l * s * (1 - s) / 2, by = weight[g] * l;
    for (int i = 0; i < 6; ++i) f[i] = (1 - s) * state[i] + s * state[6 + i];
    const double N = f[0], Vy = f[1], Vz = f[2], T = f[3];
    const double My = f[4] + bubble * (state[2] - state[8]), Mz = f[5] - bubble * (state[1] - state[7]);
    shapes(n, l, s);
    pair(k, n, dv, dv, by * N);
    pair(k, n, dw, dw, by * N);
    pair(k, n, drx, drx, by * N * (p[Iyy] + p[Izz]) / p[A]);
    pair(k, n, rx, dw, by * Vy);
    pair(k, n, rz, du, -by * Vy);
    pair(k, n, rx, ry, by * Vy / 2);
    pair(k, n, rx, dv, -by * Vz);
    pair(k, n, ry, du, by * Vz);
    pair(k, n, rx, rz, by * Vz / 2);
    pair(k, n, ry, drz, -by * T / 2);
    pair(k, n, rz, dry, by * T / 2);
    pair(k, n, rz, drx, -by * My / 2);
    pair(k, n, rx, drz, by * My / 2);
    pair(k, n, rx, dry, -by * Mz / 2);
    pair(k, n, ry, drx, by * Mz / 2);
  }
  turn_matrix(k, in->axes, matrix, count);
  return 0;
}

/* Work of a force and a moment per length on the shape functions. */
static int loads(const bedbow_element_input* in, const double* load, size_t load_count, double* vector, size_t capacity,
                 size_t* count, char* message, size_t message_size) {
  double q[6] = {0}, f[12] = {0};
  Shapes n;
  (void)load_count; /* 6 along a line */
  if (refuse(in, capacity, 12, message, message_size)) return 1;
  for (int i = 0; i < 6; ++i)
    for (int k = 0; k < 3; ++k) q[i] += in->axes[3 * (i % 3) + k] * load[3 * (i / 3) + k];
  for (int g = 0; g < 4; ++g) {
    shapes(n, length(in), at[g]);
    for (int i = 0; i < 12; ++i)
      for (int k = 0; k < 6; ++k) f[i] += weight[g] * length(in) * n[k][i] * q[k];
  }
  for (int i = 0; i < 12; ++i) {
    vector[i] = 0;
    for (int k = 0; k < 3; ++k) vector[i] += in->axes[3 * k + i % 3] * f[3 * (i / 3) + k];
  }
  *count = 12;
  return 0;
}

static const bedbow_element element = {sizeof element, 1,    2,         6,    parameters, wanted,
                                       stiffness,      mass, geometric, loads};
static const bedbow_entry entry = {BEDBOW_PLUGIN_INTERFACE,
                                   sizeof entry,
                                   "element",
                                   "slender beam",
                                   "1.0",
                                   "beam without shear flexibility",
                                   "Przemieniecki 1968, ch. 5, 11, 15",
                                   &element};

const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : NULL;
}
