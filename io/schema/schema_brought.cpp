#include "io/schema/schema_brought.h"

#include <algorithm>

namespace bedbow {

namespace {

template <class Entry> std::string brought_names(const Registry<Entry>& registry) {
  std::string out;
  for (const Entry& e : registry.entries())
    if (e.origin != "built in") out += (out.empty() ? "" : ", ") + e.name + " (" + e.origin + ")";
  return out;
}

/// Adds names to the description of a key, in every table that has it.
void tell(Schema& schema, const std::string& key, const std::string& names) {
  if (names.empty()) return;
  for (TableSpec& table : schema.tables)
    for (KeySpec& k : table.keys)
      if (k.key == key) k.doc += "; from plugins: " + names;
}

void add_sizes(TableSpec& table, const Registry<ShapeEntry>& shapes) {
  for (const ShapeEntry& shape : shapes.entries()) {
    if (shape.origin == "built in") continue;
    for (const std::string& size : shape.sizes)
      if (!table.find(size))
        table.keys.push_back(
            quantity_key(size, Dim::length, "10 mm", "size of the shape " + shape.name + " (" + shape.origin + ")")
                .positive());
  }
}

} // namespace

Schema with_brought(Schema schema, const Registries& registries) {
  for (TableSpec& table : schema.tables)
    if (table.open_keys) add_sizes(table, registries.shapes);
  tell(schema, "shape", brought_names(registries.shapes));
  tell(schema, "moment_law", brought_names(registries.moment_laws));
  tell(schema, "element", brought_names(registries.elements));
  tell(schema, "linear_solver", brought_names(registries.linear_solvers));
  return schema;
}

} // namespace bedbow
