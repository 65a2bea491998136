/* A result writer: steps.md, the steps of a solved case as a table in Markdown.
 *
 *     cc -std=c11 -O2 -fPIC -shared -o step_page.so step_page.c $(pkg-config --cflags bedbow) -lm
 *     bedbow solve case.toml --plugin ./step_page.so
 */
#include <bedbow/plugin.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

enum { most = 1 << 16 };
typedef struct page {
  char text[most];
  size_t length;
} page;

static void add(page* p, const char* format, ...) {
  va_list values;
  va_start(values, format);
  const int n = vsnprintf(p->text + p->length, most - p->length, format, values);
  va_end(values);
  if (n > 0) p->length = p->length + (size_t)n < most ? p->length + (size_t)n : most - 1;
}

static double at(const bedbow_table* t, size_t row, const char* column) {
  for (size_t c = 0; c < t->columns; ++c)
    if (strcmp(t->column_names[c], column) == 0) return t->values[row * t->columns + c];
  return NAN;
}

static int write(const bedbow_results* results, const bedbow_sink* sink, char* message, size_t message_size) {
  page p;
  p.length = 0;
  add(&p, "# %s\n\n| step | clamp bow mm | bed bow mm | apron bow mm | angle spread deg |\n|---|---|---|---|---|\n",
      results->title);
  for (size_t k = 0; k < results->table_count; ++k) {
    const bedbow_table* t = &results->tables[k];
    if (strcmp(t->name, "steps") != 0) continue;
    for (size_t i = 0; i < t->rows; ++i)
      add(&p, "| %s | %.4f | %.4f | %.4f | %.4f |\n", t->row_names[i], at(t, i, "clamp_bow_m") * 1e3,
          at(t, i, "bed_bow_m") * 1e3, at(t, i, "apron_bow_m") * 1e3,
          at(t, i, "angle_spread_rad") * 180 / 3.14159265358979324);
  }
  return sink->put(sink->self, "steps.md", p.text, p.length, message, message_size);
}

static const bedbow_writer writer = {sizeof writer, write};
static const bedbow_entry entry = {BEDBOW_PLUGIN_INTERFACE,
                                   sizeof entry,
                                   "result writer",
                                   "step page",
                                   "1.0",
                                   "steps.md: bow and spread, step by step",
                                   "Markdown",
                                   &writer};

const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : NULL;
}
