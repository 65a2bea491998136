#include "io/draw/raster.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

constexpr std::uint32_t paper = 0xffffff;
constexpr std::uint32_t ink = 0x202020;
constexpr int nothing = -1;
constexpr float cosine_of_flat = 0.9F; ///< faces at less than 25 degrees to each other get no line

std::uint32_t shaded(std::uint32_t colour, double light) {
  std::uint32_t out = 0;
  for (const int shift : {0, 8, 16}) {
    const double part = (colour >> static_cast<unsigned>(shift) & 0xffU) * light;
    out |= static_cast<std::uint32_t>(std::clamp(part, 0.0, 255.0)) << static_cast<unsigned>(shift);
  }
  return out;
}

} // namespace

Raster::Raster(int width, int height)
    : width_(width)
    , height_(height)
    , pixels_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height),
              Pixel{-std::numeric_limits<double>::infinity(), paper, nothing, Eigen::Vector3f::Zero()}) {}

void Raster::triangle(const std::array<RasterPoint, 3>& c, int part, std::span<const std::uint32_t> colours) {
  const Eigen::Vector3d& a = c[0].at;
  const Eigen::Vector3d u = c[1].at - a;
  const Eigen::Vector3d v = c[2].at - a;
  const double twice_area = u.x() * v.y() - u.y() * v.x();
  if (std::abs(twice_area) < 1e-12) return; // seen edge on
  Eigen::Vector3d normal = u.cross(v).normalized();
  if (normal.z() < 0) normal = -normal;
  // Light from above the viewer's left shoulder; y points down.
  const double light = 0.72 + 0.33 * std::max(0.0, normal.dot(Eigen::Vector3d(-0.3, -0.75, 0.6)));
  const auto range = [](double low, double high, int size) {
    return std::pair(std::clamp(static_cast<int>(std::floor(low)), 0, size),
                     std::clamp(static_cast<int>(std::ceil(high)) + 1, 0, size));
  };
  const auto [x0, x1] =
      range(std::min({a.x(), c[1].at.x(), c[2].at.x()}), std::max({a.x(), c[1].at.x(), c[2].at.x()}), width_);
  const auto [y0, y1] =
      range(std::min({a.y(), c[1].at.y(), c[2].at.y()}), std::max({a.y(), c[1].at.y(), c[2].at.y()}), height_);
  for (int y = y0; y < y1; ++y)
    for (int x = x0; x < x1; ++x) {
      const double px = x + 0.5 - a.x();
      const double py = y + 0.5 - a.y();
      const double s = (px * v.y() - py * v.x()) / twice_area;
      const double t = (u.x() * py - u.y() * px) / twice_area;
      if (s < 0 || t < 0 || s + t > 1) continue;
      Pixel& pixel =
          pixels_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(x)];
      const double depth = a.z() + s * u.z() + t * v.z();
      if (depth <= pixel.depth) continue;
      const double value = c[0].value + s * (c[1].value - c[0].value) + t * (c[2].value - c[0].value);
      const auto bands = static_cast<double>(colours.size());
      const auto band = static_cast<std::size_t>(std::clamp(value * bands, 0.0, bands - 1));
      pixel = {depth, shaded(colours[band], light), part, normal.cast<float>()};
    }
}

bool Raster::on_line(int x, int y) const {
  const Pixel& here = at(x, y);
  for (const auto& [dx, dy] : {std::pair(1, 0), std::pair(0, 1), std::pair(-1, 0), std::pair(0, -1)}) {
    if (x + dx < 0 || x + dx >= width_ || y + dy < 0 || y + dy >= height_) continue;
    const Pixel& there = at(x + dx, y + dy);
    if (there.part != here.part) return true;
    if (here.part != nothing && there.normal.dot(here.normal) < cosine_of_flat) return true;
  }
  return false;
}

std::vector<std::uint32_t> Raster::shrunk(int times) const {
  std::vector<std::uint32_t> out;
  out.reserve(pixels_.size() / static_cast<std::size_t>(times * times));
  for (int y = 0; y + times <= height_; y += times)
    for (int x = 0; x + times <= width_; x += times) {
      std::array<std::uint32_t, 3> sum{};
      for (int j = y; j < y + times; ++j)
        for (int i = x; i < x + times; ++i) {
          const std::uint32_t c = on_line(i, j) ? ink : at(i, j).colour;
          for (unsigned k = 0; k < 3; ++k) sum[k] += c >> (8 * k) & 0xffU;
        }
      const auto count = static_cast<std::uint32_t>(times * times);
      out.push_back((sum[2] + count / 2) / count << 16U | (sum[1] + count / 2) / count << 8U |
                    (sum[0] + count / 2) / count);
    }
  return out;
}

} // namespace bedbow
