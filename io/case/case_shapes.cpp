#include "io/case/case_builder.h"
#include "io/text/nearest.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr std::array size_keys{"width", "height", "diameter", "wall"};

/// Keys that are given properties only, besides the sizes that the shape lists.
bool belongs(const ShapeEntry& shape, const std::string& key) {
  if (std::ranges::find(shape.sizes, key) != shape.sizes.end()) return true;
  static constexpr std::array optional{
      "A", "Iyy", "Izz", "Iyz", "J", "Ay", "Az", "Wt", "shear_centre_y", "shear_centre_z", "width", "height"};
  return shape.name == "section" && std::ranges::find(optional, key) != optional.end();
}

bool is_size(const CaseValues& in, const std::string& key) {
  static const auto shared = schema::shape_keys();
  const bool known = std::ranges::find(shared, key, &KeySpec::key) != shared.end();
  return (known && key != "shape" && key != "turn") || !in.spec().find(key);
}

/// Reports sizes that the shape lacks and those that it does not use. \return whether it has all it needs.
bool check_sizes(const CaseBuilder& b, const CaseValues& in, const ShapeEntry& shape) {
  bool complete = true;
  for (const std::string& size : shape.sizes) {
    complete = complete && in.value(size);
    if (!in.given(size)) b.missing(in, size, "the shape \"" + shape.name + "\" needs " + joined(shape.sizes));
  }
  for (const auto& [key, value] : in.all()) {
    if (!is_size(in, key)) continue;
    complete = complete && value.good;
    if (!belongs(shape, key))
      b.problems.warning(value.pos, in.path(key),
                         "the shape \"" + shape.name + "\" does not use it; its sizes are " + joined(shape.sizes));
  }
  return complete;
}

/// The key that a message about a shape names first, so that it gets that key's position.
std::string key_meant(const CaseValues& in, const ShapeEntry& shape, const std::string& message) {
  std::string meant = "shape";
  std::size_t first = std::string::npos;
  for (const std::string& size : shape.sizes)
    if (const std::size_t at = message.find(size); in.given(size) && at < first) {
      meant = size;
      first = at;
    }
  return meant;
}

} // namespace

Shape shape_of(const CaseBuilder& b, const CaseValues& in, double nu) {
  Shape shape;
  shape.kind = in.text("shape").value_or("");
  shape.turn = in.number_or("turn", 0);
  shape.width = in.number_or("width", 0);
  shape.height = in.number_or("height", 0);
  shape.diameter = in.number_or("diameter", 0);
  shape.wall = in.number_or("wall", 0);
  for (const auto& [key, value] : in.all())
    if (value.good && !value.numbers.empty() && is_size(in, key) &&
        std::ranges::find(size_keys, key) == size_keys.end())
      shape.given[key] = value.numbers.front();
  if (shape.kind.empty()) return shape;
  const ShapeEntry* entry = b.registries.shapes.find(shape.kind);
  if (!entry) {
    b.wrong(in, "shape", "unknown section shape \"" + shape.kind + "\"; available: " + b.registries.shapes.names());
    shape.kind.clear();
    return shape;
  }
  if (!check_sizes(b, in, *entry)) return shape;
  try {
    entry->make(shape, nu);
  } catch (const std::invalid_argument& e) {
    b.wrong(in, key_meant(in, *entry, e.what()), e.what());
  }
  return shape;
}

} // namespace bedbow
