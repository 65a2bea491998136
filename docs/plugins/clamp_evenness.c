/* A finding: evenness of the clamping along the bend line in the worst bend step, as minimum over maximum force per
 * length, and the maximum itself.
 *
 *     cc -std=c11 -O2 -fPIC -shared -o clamp_evenness.so clamp_evenness.c $(pkg-config --cflags bedbow)
 *     bedbow solve case.toml --plugin ./clamp_evenness.so
 */
#include <bedbow/plugin.h>
#include <math.h>
#include <stdio.h>

static int put(bedbow_value* values, size_t capacity, size_t* count, const char* key, double value) {
  if (*count == capacity) return 0;
  snprintf(values[*count].key, sizeof values[*count].key, "%s", key);
  values[(*count)++].value = value;
  return 1;
}

static int evaluate(const bedbow_step* steps, size_t step_count, bedbow_value* values, size_t capacity, size_t* count,
                    char* message, size_t message_size) {
  double evenness = 1, greatest = 0;
  *count = 0;
  for (size_t k = 0; k < step_count; ++k) {
    double least = INFINITY, most = 0;
    for (size_t i = 0; i < steps[k].stations; ++i) {
      const double f = steps[k].clamp_force[i];
      if (isnan(f)) continue;
      least = fmin(least, f);
      most = fmax(most, f);
    }
    if (most <= 0) continue;
    evenness = fmin(evenness, least / most);
    greatest = fmax(greatest, most);
  }
  if (greatest == 0) {
    snprintf(message, message_size, "nothing is clamped in this case");
    return 1;
  }
  put(values, capacity, count, "least_over_greatest", evenness);
  put(values, capacity, count, "greatest_N_per_mm", greatest * 1e-3);
  return 0;
}

static const bedbow_finding finding = {sizeof finding, evaluate};
static const bedbow_entry entry = {BEDBOW_PLUGIN_INTERFACE,
                                   sizeof entry,
                                   "finding",
                                   "clamp evenness",
                                   "1.0",
                                   "least over greatest clamp force along the bend line",
                                   "own",
                                   &finding};

const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : NULL;
}
