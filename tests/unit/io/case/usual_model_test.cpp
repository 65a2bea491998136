// A clamp of flats was solved as beams unless its builder knew to ask for more: the posts came out several times too
// strong on thin wide flats. Which model a bar gets where the case says nothing.
#include "mesh/machine/usual_model.h"

#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

Machine bar_of(const std::string& shape, const std::string& more = "") {
  return test::machine("[bed]\nlength = \"1 m\"\nmaterial = \"S235JR\"\n[[bed.bar]]\nname = \"web\"\n" + shape +
                       "\nat = [\"0 mm\", \"-50 mm\"]\n"
                       "[[support]]\nbar = \"bed.web\"\nx = \"0 mm\"\nholds = [\"x\", \"y\", \"z\", \"rx\"]\n" +
                       more);
}

BarModel model_of(const std::string& shape, const std::string& more = "") {
  return bar_of(shape, more).body(BodyKind::bed).bars[0].model;
}

} // namespace

TEST(UsualModel, RectanglesBendAcrossWhicheverWayTheyStand) {
  EXPECT_EQ(model_of("shape = \"rectangle\"\nwidth = \"60 mm\"\nheight = \"20 mm\""), BarModel::strip);
  EXPECT_EQ(model_of("shape = \"rectangle\"\nwidth = \"20 mm\"\nheight = \"60 mm\""), BarModel::strip);
  EXPECT_EQ(model_of("shape = \"rectangle\"\nwidth = \"20 mm\"\nheight = \"25 mm\""), BarModel::strip);
  EXPECT_EQ(model_of("shape = \"rectangle\"\nwidth = \"20 mm\"\nheight = \"20 mm\""), BarModel::strip);
  EXPECT_EQ(model_of("shape = \"rectangle\"\nwidth = \"60 mm\"\nheight = \"20 mm\"\nturn = \"30 deg\""),
            BarModel::beam);
  EXPECT_EQ(model_of("shape = \"tube\"\nwidth = \"60 mm\"\nheight = \"20 mm\"\nwall = \"2 mm\""), BarModel::beam);
}

TEST(UsualModel, WhatTheCaseSaysCounts) {
  const std::string flat = "shape = \"rectangle\"\nwidth = \"60 mm\"\nheight = \"20 mm\"\n";
  EXPECT_EQ(model_of(flat + "model = \"beam\""), BarModel::beam);
  EXPECT_EQ(model_of(flat + "model = \"plate\""), BarModel::plate);
  EXPECT_EQ(model_of(flat + "element = \"beam\""), BarModel::beam);
  EXPECT_EQ(model_of(flat, "[solve]\ndimension = 2\n"), BarModel::beam) << "in the plane nothing bends across";
}

TEST(UsualModel, ElementsAreTwiceAsLongWhereOnlyStripsAndBeamsStand) {
  const std::string flat = "shape = \"rectangle\"\nwidth = \"60 mm\"\nheight = \"20 mm\"\n";
  EXPECT_EQ(bar_of(flat).solve.element_size, 0.03);
  EXPECT_EQ(bar_of(flat + "model = \"beam\"").solve.element_size, 0.015);
  EXPECT_EQ(bar_of(flat + "model = \"plate\"").solve.element_size, 0.015);
  EXPECT_EQ(bar_of(flat, "[solve]\nelement_size = \"7 mm\"\n").solve.element_size, 0.007);
}

} // namespace bedbow
