/// \file
/// Triangles as pixels, in memory and without any display: a depth buffer, flat shading, and a dark line wherever one
/// part or face ends and another begins.
#pragma once

#include <Eigen/Core>

#include <array>
#include <cstdint>
#include <span>
#include <vector>

namespace bedbow {

/// A corner: place in pixels (x right, y down, z towards the eye) and the value that colours it, 0 to 1.
struct RasterPoint {
  Eigen::Vector3d at;
  double value = 0;
};

class Raster {
public:
  Raster(int width, int height);
  /// Draws a triangle in front of what lies behind. \param part pixels of different parts get a line between them.
  /// \param colours bands over the values 0 to 1, 0x00RRGGBB.
  void triangle(const std::array<RasterPoint, 3>& corners, int part, std::span<const std::uint32_t> colours);
  /// The picture on a white ground, with lines, each `times` x `times` pixels averaged into one. Width and height must
  /// be multiples of it.
  [[nodiscard]] std::vector<std::uint32_t> shrunk(int times) const;

private:
  struct Pixel {
    double depth;
    std::uint32_t colour;
    int part;
    Eigen::Vector3f normal;
  };
  [[nodiscard]] const Pixel& at(int x, int y) const {
    return pixels_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(x)];
  }
  [[nodiscard]] bool on_line(int x, int y) const;

  int width_, height_;
  std::vector<Pixel> pixels_;
};

} // namespace bedbow
