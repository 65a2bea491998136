/* An element: the slender beam of Euler and Bernoulli, without shear flexibility, as `element = "slender beam"` of a
 * bar. Stiffness: Przemieniecki 1968, ch. 5, with the shear parameters zero. For sections whose shear centre is the
 * centroid and whose axes are principal.
 *
 *     cc -std=c11 -O2 -fPIC -shared -o slender_beam.so slender_beam.c $(pkg-config --cflags bedbow) -lm
 *     bedbow list --prove "slender beam" --plugin ./slender_beam.so
 */
#include <bedbow/plugin.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { E, G, A, Iyy, Izz, J, parameters };
static const bedbow_parameter wanted[parameters] = {
    {"E", "Pa", "Young's modulus", 210e9},
    {"G", "Pa", "shear modulus", 81e9},
    {"A", "m^2", "area", 1.2e-3},
    {"Iyy", "m^4", "second moment about the width's axis", 3.6e-7},
    {"Izz", "m^4", "second moment about the height's axis", 4e-8},
    {"J", "m^4", "torsion constant", 1.26e-7},
};

/* Bending in one plane: deflection dof u, rotation dof r, of sign s = dv/dx. */
static void bend(double k[12][12], double EI, double l, int u, int r, double s) {
  const int d[4] = {u, r, u + 6, r + 6};
  const double c = EI / (l * l * l);
  const double m[4][4] = {{12, 6 * l * s, -12, 6 * l * s},
                          {6 * l * s, 4 * l * l, -6 * l * s, 2 * l * l},
                          {-12, -6 * l * s, 12, -6 * l * s},
                          {6 * l * s, 2 * l * l, -6 * l * s, 4 * l * l}};
  for (int i = 0; i < 4; ++i)
    for (int j = 0; j < 4; ++j) k[d[i]][d[j]] += c * m[i][j];
}

static void bar(double k[12][12], double stiffness, int u) {
  k[u][u] += stiffness;
  k[u + 6][u + 6] += stiffness;
  k[u][u + 6] -= stiffness;
  k[u + 6][u] -= stiffness;
}

/* Rows and columns by threes from the beam's axes to global ones. */
static void turn(double k[12][12], const double* axes, double* out) {
  for (int p = 0; p < 4; ++p)
    for (int q = 0; q < 4; ++q)
      for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) {
          double sum = 0;
          for (int a = 0; a < 3; ++a)
            for (int b = 0; b < 3; ++b) sum += axes[3 * a + i] * k[3 * p + a][3 * q + b] * axes[3 * b + j];
          out[12 * (3 * p + i) + 3 * q + j] = sum;
        }
}

static int stiffness(const bedbow_element_input* in, double* matrix, size_t capacity, size_t* count, char* message,
                     size_t message_size) {
  const double *c = in->corners, *v = in->parameters;
  const double x = c[3] - c[0], y = c[4] - c[1], z = c[5] - c[2], l = sqrt(x * x + y * y + z * z);
  double k[12][12];
  if (capacity < 144 || !(l > 0)) {
    snprintf(message, message_size, "no room, or an element without length");
    return 1;
  }
  memset(k, 0, sizeof k);
  bar(k, v[E] * v[A] / l, 0);
  bar(k, v[G] * v[J] / l, 3);
  bend(k, v[E] * v[Izz], l, 1, 5, 1);
  bend(k, v[E] * v[Iyy], l, 2, 4, -1);
  turn(k, in->axes, matrix);
  *count = 144;
  return 0;
}

static const bedbow_element element = {sizeof element, 1, 2, 6, parameters, wanted, stiffness};
static const bedbow_entry entry = {
    BEDBOW_PLUGIN_INTERFACE,     sizeof entry, "element", "slender beam", "1.0", "beam without shear flexibility",
    "Przemieniecki 1968, ch. 5", &element};

const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : NULL;
}
