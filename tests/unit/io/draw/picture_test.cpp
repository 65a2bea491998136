#include "io/draw/picture.h"
#include "io/draw/picture_module.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

/// Big-endian number of the PNG head (ISO/IEC 15948, 11.2.2: width and height stand behind "IHDR").
std::size_t word(const std::string& png, std::size_t at) {
  std::size_t out = 0;
  for (std::size_t i = 0; i < 4; ++i) out = out << 8U | static_cast<unsigned char>(png.at(at + i));
  return out;
}

TEST(Picture, IsAPngOfTheSizeAskedFor) {
  const Findings f = test::findings();
  const std::string png = machine_picture(f.title, f.steps[1], {}, {800, 500});
  EXPECT_EQ(png.substr(0, 8), "\x89PNG\r\n\x1a\n");
  EXPECT_EQ(png.substr(12, 4), "IHDR");
  EXPECT_EQ(word(png, 16), 800U);
  EXPECT_EQ(word(png, 20), 500U);
  EXPECT_EQ(png.substr(png.size() - 8, 4), "IEND");
  EXPECT_EQ(png, machine_picture(f.title, f.steps[1], {}, {800, 500})) << "the same bytes again";
  EXPECT_NE(png, machine_picture(f.title, f.steps[1], {}, {800, 500, 200})) << "another factor, another picture";
}

TEST(Picture, TextReachesThePicture) {
  const Pixels white{400, 300, std::vector<std::uint32_t>(400 * 300, 0xffffff)};
  EXPECT_NE(picture_module().png(white, {}), picture_module().png(white, {{20, 40, 20, "bow"}}));
}

TEST(Picture, TheFactorIsRoundAndShowsATwentieth) {
  const Findings f = test::findings();
  const double factor = good_factor(f.steps[0].fields);
  const double digit = factor / std::pow(10, std::floor(std::log10(factor)));
  EXPECT_TRUE(std::abs(digit - 1) < 1e-9 || std::abs(digit - 2) < 1e-9 || std::abs(digit - 5) < 1e-9) << factor;
  // The plate's 2 mm is the greatest movement but for the bars' small turning; the machine is 0.9 m long and more.
  EXPECT_GT(factor * 0.002, 0.05 * 0.9 / 2.5);
  EXPECT_LT(factor * 0.002, 0.05 * 1.0);
}

TEST(Picture, NothingToDrawIsSaid) {
  StepResult empty;
  empty.name = "load";
  EXPECT_THROW(machine_picture("t", empty, {}), std::invalid_argument);
}

} // namespace

} // namespace bedbow
