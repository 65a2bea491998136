/* The C interface of plugins, version 2: what a shared object provides to bedbow. Installed as <bedbow/plugin.h>.
 * Kinds: "moment law", "section shape", "element", "linear solver", "finding", "result writer". Within a version no
 * structure changes; kinds may be added.
 *
 * A plugin exports one function, bedbow_plugin, that gives its entries by index and NULL after the last:
 *
 *     const bedbow_entry* bedbow_plugin(uint32_t index);
 *
 * Entries and the data they point to must remain valid as long as the object is loaded. All numbers are in SI units: m,
 * N, Pa, rad. Arrays are passed as pointer and extent, matrices row by row. Every call returns 0 on success; any other
 * value is a refusal, with the reason in `message` (of `message_size` bytes, ended by a zero). No exception may leave a
 * call. Calls may come from several threads at once. Complete examples: docs/plugins/. */
#ifndef BEDBOW_PLUGIN_H
#define BEDBOW_PLUGIN_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

#define BEDBOW_PLUGIN_INTERFACE 2u

/* One entry of a plugin. */
typedef struct bedbow_entry {
  uint32_t interface_version; /* BEDBOW_PLUGIN_INTERFACE */
  uint32_t struct_size;       /* sizeof(bedbow_entry) */
  const char* kind;           /* "moment law", ...: see above */
  const char* name;           /* as the case names it; unique within its kind */
  const char* version;        /* of the plugin */
  const char* description;    /* one line */
  const char* source;         /* book, standard or paper; "own" where there is none */
  const void* functions;      /* by kind: bedbow_moment_law, bedbow_shape, bedbow_element, ... */
} bedbow_entry;

/* ---- moment law ---- */

/* The sheet and its material; NaN where the case does not give a value. */
typedef struct bedbow_sheet {
  uint32_t struct_size;
  double thickness, width, flange, inside_radius, angle; /* [m], [rad] */
  double E, nu, yield_strength, tensile, K, n;           /* [Pa]; flow stress = K strain^n */
} bedbow_sheet;

/* A sheet moment law. */
typedef struct bedbow_moment_law {
  uint32_t struct_size;
  /* Bending moment per unit width of the sheet [N m/m], finite and > 0. */
  int (*moment)(const bedbow_sheet* sheet, double* moment, char* message, size_t message_size);
} bedbow_moment_law;

/* ---- finding ---- */

/* One step of a solved case. Arrays have `stations` entries; NaN where a figure has no meaning. The clamp force is all
 * that acts between nose and sheet, by the pads and by the sheet's own lever, compression positive. */
typedef struct bedbow_step {
  uint32_t struct_size;
  const char* name; /* "clamp", "bend 90 deg", "load" */
  double angle;     /* [rad] */
  double clamp_bow, bed_bow, apron_bow, angle_mean, angle_spread;
  size_t stations;
  const double *x, *nose_z, *bed_z, *apron_n, *angle_deviation, *clamp_force; /* [m], [rad], [N/m] */
} bedbow_step;

/* A computed number. The key states quantity and unit, as in "peak_clamp_N_per_mm", and holds letters, digits and _. */
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

/* ---- section shape ---- */

/* A place of a section where stress may be greatest, and the shear stress there (along y, along z) per unit force. */
typedef struct bedbow_stress_point {
  double y, z;      /* from the centroid [m] */
  double tau_Vy[2]; /* per shear force along y [1/m^2] */
  double tau_Vz[2]; /* per shear force along z [1/m^2] */
  double tau_T[2];  /* per torque [1/m^3] */
} bedbow_stress_point;

/* A section about its centroid, y along the width, z along the height. The first line is set by the program, the rest
 * by the plugin. */
typedef struct bedbow_section {
  uint32_t struct_size;
  size_t point_capacity, corner_capacity, loop_capacity; /* room in the arrays below */
  double A, Iyy, Izz, Iyz;                               /* [m^2], [m^4]: of z^2, y^2 and y z */
  double J, Ay, Az;                                      /* Saint-Venant's constant [m^4], shear areas [m^2] */
  double shear_centre_y, shear_centre_z;                 /* from the centroid [m] */
  bedbow_stress_point* points;                           /* the extreme points: corners, and where shear peaks */
  size_t point_count;                                    /* 1 or more */
  double* corners;                                       /* of the outline, (y, z) each [m] */
  size_t* loop_ends;                                     /* corners up to the end of each closed loop: first the */
  size_t loop_count;                                     /* outside, counter-clockwise, then holes; 1 or more */
} bedbow_section;

/* A section shape: `shape = "name"` in a case, with its sizes as further keys. */
typedef struct bedbow_shape {
  uint32_t struct_size;
  size_t size_count;
  const char* const* sizes; /* keys, each a length: "width", "height", "diameter", "wall", or own ones */
  const double* examples;   /* a sensible value of each [m], for `bedbow list --prove` */
  /* \param sizes in the order above [m]. \param nu Poisson's ratio of the material. */
  int (*make)(const double* sizes, size_t size_count, double nu, bedbow_section* section, char* message,
              size_t message_size);
} bedbow_shape;

/* ---- element formulation ---- */

/* Values that an element may request. Along a line: E, G, nu, density, A, Iyy, Izz, Iyz, J, Ay, Az,
 * shear_centre_y, shear_centre_z; over a surface: E,
 * nu, density, thickness. */
typedef struct bedbow_parameter {
  const char *name, *unit, *meaning; /* unit as "Pa", "-", "kg/m^3", "m^2", "m^4", "m" */
  double example;                    /* a sensible value, SI, for the conformance suite */
} bedbow_parameter;

typedef struct bedbow_element_input {
  uint32_t struct_size;
  size_t nodes, parameter_count;
  const double* corners; /* nodes x 3: places of the nodes, global axes [m] */
  const double* axes;    /* 3 x 3, rows: along, width, height of the section; over a surface x, y, normal */
  const double* parameters;
} bedbow_element_input;

/* An element: `element = "name"` of a bar, member or panel. The interpolation between the nodes stays the built-in
 * element's; forces along a line follow from this stiffness by equilibrium. It must pass `bedbow list --prove NAME`,
 * with all that it provides. Matrices are symmetric, n x n with n = nodes * dofs_per_node, node by node, global axes; a
 * call writes *count = n * n values of them, n of a vector. */
typedef struct bedbow_element {
  uint32_t struct_size;
  uint32_t dimension;     /* 1: along a line, 2: over a surface */
  uint32_t nodes;         /* 2 along a line, 4 over a surface, counter-clockwise */
  uint32_t dofs_per_node; /* 6: ux uy uz rx ry rz, global axes */
  size_t parameter_count;
  const bedbow_parameter* parameters;
  int (*stiffness)(const bedbow_element_input* input, double* matrix, size_t capacity, size_t* count, char* message,
                   size_t message_size);
  /* The rest may be NULL. Mass; without it half of the mass is put at each end node, a quarter at each corner.
   * \param lumped not 0: on the diagonal, as far as the axes allow. */
  int (*mass)(const bedbow_element_input* input, int lumped, double* matrix, size_t capacity, size_t* count,
              char* message, size_t message_size);
  /* Geometric stiffness of a stressed element, (K + factor K_g) u = 0; without it buckling is refused.
   * \param state along a line: N Vy Vz T My Mz at node 1, then at node 2, on the +x face, in the
   * element's axes [N, N m], T about the shear centre (12 values); over a surface: nxx nyy nxy [N/m] mxx myy mxy [N]
   * qx qy [N/m] at the 2 x 2 Gauss points, in the order of the nodes (32 values). */
  int (*geometric)(const bedbow_element_input* input, const double* state, size_t state_count, double* matrix,
                   size_t capacity, size_t* count, char* message, size_t message_size);
  /* Equivalent nodal loads of a uniform load: opposite to the fixed-end reactions; without it the built-in
   * element's. \param load global axes; along a line force [N/m] and moment [N] per length on the centroid (6 values);
   * over a surface force per area [Pa] (3 values). */
  int (*loads)(const bedbow_element_input* input, const double* load, size_t load_count, double* vector,
               size_t capacity, size_t* count, char* message, size_t message_size);
} bedbow_element;

/* ---- linear solver ---- */

/* Lower triangle of a symmetric matrix by columns, row numbers ascending in each. */
typedef struct bedbow_matrix {
  uint32_t struct_size;
  size_t order, entries;
  const int32_t* starts; /* order + 1: where each column begins among the entries */
  const int32_t* rows;   /* of the entries */
  const double* values;
  int positive; /* not 0: expected positive definite */
  int block;    /* so many unknowns in a row share their pattern */
} bedbow_matrix;

/* A linear solver: `linear_solver = "name"` in [solve]. */
typedef struct bedbow_linear_solver {
  uint32_t struct_size;
  /* Factors a matrix. Where an unknown has no stiffness left, returns 0 with that unknown in *zero_pivot (else -1) and
   * no factor. */
  int (*factor)(const bedbow_matrix* matrix, void** factor, int64_t* zero_pivot, char* message, size_t message_size);
  /* Solves in place. \param b columns x order: one right-hand side after the other. May run in several threads. */
  int (*solve)(const void* factor, double* b, size_t order, size_t columns, char* message, size_t message_size);
  /* Number of negative eigenvalues of the matrix; NULL where the method can't determine it. */
  int (*negative_pivots)(const void* factor, int64_t* count, char* message, size_t message_size);
  void (*release)(void* factor);
} bedbow_linear_solver;

/* ---- result writer ---- */

/* Numbers of a solved case; SI, with the unit in the column's name. NaN where a figure has no meaning. */
typedef struct bedbow_table {
  const char* name; /* "steps", "bend_line", "bars", "joints", "dials" */
  size_t rows, columns;
  const char* const* column_names;
  const char* const* row_names; /* name of the step, bar, joint or dial; may repeat */
  const double* values;         /* rows x columns */
} bedbow_table;

typedef struct bedbow_results {
  uint32_t struct_size;
  const char *title, *json; /* `json`: the whole of results.json */
  size_t table_count;
  const bedbow_table* tables;
} bedbow_results;

/* Receives a writer's files; they are put into the output directory together with all others, or none is.
 * `put` copies its arguments; it refuses names that are not plain file names, or already used. */
typedef struct bedbow_sink {
  uint32_t struct_size;
  void* self;
  int (*put)(void* self, const char* file_name, const void* bytes, size_t size, char* message, size_t message_size);
} bedbow_sink;

/* A result writer: further files of a solved case, written whenever the plugin is loaded. */
typedef struct bedbow_writer {
  uint32_t struct_size;
  int (*write)(const bedbow_results* results, const bedbow_sink* sink, char* message, size_t message_size);
} bedbow_writer;

#ifdef __cplusplus
}
#endif

#endif
