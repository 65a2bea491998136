#include "io/draw/raster.h"

#include <gtest/gtest.h>

#include <numeric>

namespace bedbow {

namespace {

constexpr std::array<std::uint32_t, 2> bands{0x0000ff, 0xff0000};

/// Sum of how dark the pixels are, 0 white to 1 black in one channel.
double covered(const std::vector<std::uint32_t>& pixels, unsigned shift) {
  return std::accumulate(pixels.begin(), pixels.end(), 0.0,
                         [&](double sum, std::uint32_t p) { return sum + 1 - (p >> shift & 0xffU) / 255.0; });
}

TEST(Raster, ATriangleCoversItsArea) {
  Raster raster(300, 300);
  raster.triangle({{{{30, 30, 0}, 0}, {{270, 30, 0}, 0}, {{30, 270, 0}, 0}}}, 0, bands);
  const auto pixels = raster.shrunk(3);
  ASSERT_EQ(pixels.size(), 100U * 100U);
  // Half base times height, in pixels of the shrunk picture; along the edges a line's width more or less. No red in
  // blue, so that channel is dark where the triangle is.
  const double area = 240.0 * 240.0 / 2 / 9;
  EXPECT_NEAR(covered(pixels, 16), area, (240 + 240 + 340) / 3.0 / 3.0);
  EXPECT_EQ(pixels.front(), 0xffffffU) << "nothing is drawn outside";
}

TEST(Raster, TheNearerOneIsSeenInEitherOrder) {
  for (const bool nearer_first : {true, false}) {
    Raster raster(90, 90);
    const auto at = [](double z, double value) {
      return std::array<RasterPoint, 3>{{{{0, 0, z}, value}, {{900, 0, z}, value}, {{0, 900, z}, value}}};
    };
    raster.triangle(at(nearer_first ? 5 : 1, nearer_first ? 0.9 : 0.1), 0, bands);
    raster.triangle(at(nearer_first ? 1 : 5, nearer_first ? 0.1 : 0.9), 1, bands);
    const std::uint32_t middle = raster.shrunk(3)[15 * 30 + 15];
    EXPECT_GT(middle >> 16U, 150U);
    EXPECT_EQ(middle & 0xffU, 0U);
  }
}

TEST(Raster, ValuesRunThroughTheBands) {
  Raster raster(90, 30);
  raster.triangle({{{{0, -200, 0}, 0}, {{90, -200, 0}, 1}, {{0, 300, 0}, 0}}}, 0, bands);
  raster.triangle({{{{90, -200, 0}, 1}, {{90, 300, 0}, 1}, {{0, 300, 0}, 0}}}, 0, bands);
  const auto pixels = raster.shrunk(3); // 30 x 10
  EXPECT_EQ(pixels[5 * 30 + 3] >> 16U, 0U) << "low values at the left";
  EXPECT_EQ(pixels[5 * 30 + 26] & 0xffU, 0U) << "high values at the right";
}

TEST(Raster, PartsHaveALineBetweenThem) {
  Raster raster(30, 30);
  const auto square = [&](double left, double right, int part) {
    raster.triangle({{{{left, 0, 0}, 0}, {{right, 0, 0}, 0}, {{left, 30, 0}, 0}}}, part, bands);
    raster.triangle({{{{right, 0, 0}, 0}, {{right, 30, 0}, 0}, {{left, 30, 0}, 0}}}, part, bands);
  };
  square(0, 15, 0);
  square(15, 30, 0);
  const std::uint32_t without = raster.shrunk(30)[0];
  square(15, 30, 0);
  EXPECT_EQ(raster.shrunk(30)[0], without) << "the same part goes on";
  Raster other(30, 30);
  raster = other;
  square(0, 15, 0);
  square(15, 30, 1);
  EXPECT_LT(raster.shrunk(30)[0] & 0xffU, without & 0xffU) << "two of thirty columns are dark";
}

TEST(Raster, PlacesOutsideAreCutOff) {
  Raster raster(30, 30);
  raster.triangle({{{{-1e6, -1e6, 0}, 0}, {{1e6, -1e6, 0}, 0}, {{0, 1e6, 0}, 0}}}, 0, bands);
  EXPECT_NE(raster.shrunk(30)[0], 0xffffffU);
}

} // namespace

} // namespace bedbow
