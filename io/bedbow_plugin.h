/* The C interface of plugins, version 1: what a shared object brings to bedbow. Installed as <bedbow/plugin.h>.
 *
 * A plugin exports one function, bedbow_plugin, that gives its entries by index and NULL after the last:
 *
 *     const bedbow_entry* bedbow_plugin(uint32_t index);
 *
 * Entries and what they point to must live as long as the object is loaded. All numbers are in SI units: m, N, Pa, rad.
 * Arrays come as pointer and extent. Every call returns 0 when it went well; any other value refuses, and `message` (of
 * `message_size` bytes, ended by a zero) says why. No exception may leave a call. Calls may come from several threads
 * at once. Complete examples: docs/plugins/. */
#ifndef BEDBOW_PLUGIN_H
#define BEDBOW_PLUGIN_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

#define BEDBOW_PLUGIN_INTERFACE 1u

/* One thing that a plugin brings. */
typedef struct bedbow_entry {
  uint32_t interface_version; /* BEDBOW_PLUGIN_INTERFACE */
  uint32_t struct_size;       /* sizeof(bedbow_entry) */
  const char* kind;           /* "moment law" or "finding" */
  const char* name;           /* as the case names it; unique within its kind */
  const char* version;        /* of the plugin */
  const char* description;    /* one line */
  const char* source;         /* book, standard or paper; "own" where there is none */
  const void* functions;      /* bedbow_moment_law or bedbow_finding, by kind */
} bedbow_entry;

/* The sheet and its material; NaN where the case does not know a value. */
typedef struct bedbow_sheet {
  uint32_t struct_size;
  double thickness, width, flange, inside_radius, angle; /* [m], [rad] */
  double E, nu, yield_strength, tensile, K, n;           /* [Pa]; flow stress = K strain^n */
} bedbow_sheet;

/* A sheet moment law. */
typedef struct bedbow_moment_law {
  uint32_t struct_size;
  /* Bending moment per unit width that folds the sheet [N m/m], finite and > 0. */
  int (*moment)(const bedbow_sheet* sheet, double* moment, char* message, size_t message_size);
} bedbow_moment_law;

/* One step of a solved case. Arrays have `stations` entries; NaN where a figure has no meaning. */
typedef struct bedbow_step {
  uint32_t struct_size;
  const char* name; /* "clamp", "bend 90 deg", "load" */
  double angle;     /* [rad] */
  double clamp_bow, bed_bow, apron_bow, angle_mean, angle_spread;
  size_t stations;
  const double *x, *nose_z, *bed_z, *apron_n, *angle_deviation, *clamp_force; /* [m], [rad], [N/m] */
} bedbow_step;

/* A number found. The key tells quantity and unit, as in "peak_clamp_N_per_mm", and holds letters, digits and _. */
typedef struct bedbow_value {
  char key[64];
  double value;
} bedbow_value;

/* A finding: further numbers from a solved case, reported under `findings` in results.json. */
typedef struct bedbow_finding {
  uint32_t struct_size;
  /* Writes at most `capacity` values and their number. */
  int (*evaluate)(const bedbow_step* steps, size_t step_count, bedbow_value* values, size_t capacity, size_t* count,
                  char* message, size_t message_size);
} bedbow_finding;

#ifdef __cplusplus
}
#endif

#endif
