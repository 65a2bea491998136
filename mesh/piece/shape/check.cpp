#include "mesh/piece/shape/check.h"

#include <cmath>
#include <cstdio>
#include <stdexcept>
#include <string>

namespace bedbow {

namespace {
std::string millimetres(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.6g mm", value * 1e3);
  return text;
}
} // namespace

void require_size(const Shape& shape, std::string_view size, double value) {
  if (std::isfinite(value) && value > 0) return;
  throw std::invalid_argument(shape.kind + ": " + std::string(size) + " must be greater than 0, but is " +
                              millimetres(value));
}

void require_wall(const Shape& shape, double limit, std::string_view of_what) {
  require_size(shape, "wall", shape.wall);
  if (shape.wall < limit) return;
  throw std::invalid_argument(shape.kind + ": wall must be less than " + std::string(of_what) + " (" +
                              millimetres(limit) + "), but is " + millimetres(shape.wall));
}

} // namespace bedbow
