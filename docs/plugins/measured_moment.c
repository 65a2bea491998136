/* A sheet moment law from measurement: bending moment per width of mild-steel strips folded on a bench with a spring
 * scale, by thickness (invented figures for the example), with linear interpolation.
 *
 *     cc -std=c11 -O2 -fPIC -shared -o measured_moment.so measured_moment.c $(pkg-config --cflags bedbow)
 *     bedbow solve case.toml --plugin ./measured_moment.so      # with moment_law = "measured" in its [sheet]
 */
#include <bedbow/plugin.h>
#include <stdio.h>

static const double thickness_mm[] = {0.5, 1.0, 1.5, 2.0, 3.0};
static const double moment_N[] = {17.0, 70.0, 160.0, 285.0, 640.0}; /* N m/m, which is N mm/mm */
enum { measured = sizeof thickness_mm / sizeof *thickness_mm };

static int moment(const bedbow_sheet* sheet, double* out, char* message, size_t message_size) {
  const double t = sheet->thickness * 1e3;
  for (int i = 0; i + 1 < measured; ++i)
    if (t >= thickness_mm[i] && t <= thickness_mm[i + 1]) {
      const double s = (t - thickness_mm[i]) / (thickness_mm[i + 1] - thickness_mm[i]);
      *out = moment_N[i] + s * (moment_N[i + 1] - moment_N[i]);
      return 0;
    }
  snprintf(message, message_size, "%.2f mm was not measured; the table goes from 0.5 to 3 mm", t);
  return 1;
}

static const bedbow_moment_law law = {sizeof law, moment};
static const bedbow_entry entry = {BEDBOW_PLUGIN_INTERFACE,
                                   sizeof entry,
                                   "moment law",
                                   "measured",
                                   "1.0",
                                   "read off a table of measured moments",
                                   "own measurement (invented figures)",
                                   &law};

const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : NULL;
}
