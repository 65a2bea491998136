#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

using test::expect_error;

const std::string with_structure = test::folder(R"([[member]]
name = "cheek"
from = ["0 mm", "0 mm", "-500 mm"]
to = ["0 mm", "0 mm", "-800 mm"]
shape = "round"
diameter = "8 mm"
material = "S275JR"
[[panel]]
name = "side"
corner = ["0 mm", "500 mm", "0 mm"]
edge_a = ["0 mm", "200 mm", "0 mm"]
edge_b = ["0 mm", "0 mm", "150 mm"]
thickness = "12 mm"
material = "DC01"
)");

/// What the first side of a tie refers to.
Ref side(const std::string& name) {
  return test::machine(with_structure + "[[tie]]\njoins = [\"" + name +
                       "\", \"clamp.flat\"]\nat = [\"0 mm\", \"0 mm\", \"0 mm\"]\nholds = [\"x\"]\n")
      .ties.at(0)
      .joins[0];
}

TEST(CaseRefs, NamesResolve) {
  EXPECT_EQ(side("bed.square"), (Ref{Ref::Kind::bar, BodyKind::bed, 0}));
  EXPECT_EQ(side("apron"), (Ref{Ref::Kind::bar, BodyKind::apron, 0})) << "a body of one bar";
  EXPECT_EQ(side("ground"), (Ref{Ref::Kind::ground}));
  EXPECT_EQ(side("cheek"), (Ref{Ref::Kind::member, BodyKind::bed, 0}));
  EXPECT_EQ(side("member.cheek"), side("cheek"));
  EXPECT_EQ(side("panel.side"), (Ref{Ref::Kind::panel, BodyKind::bed, 0}));
}

TEST(CaseRefs, UnknownNames) {
  const auto expect = [](const std::string& before, const std::string& name, const std::vector<std::string>& words) {
    expect_error(before,
                 "[[tie]]\nname = \"t\"\njoins = [\"" + name + "\", \"ground\"]\nx = \"0 mm\"\nholds = [\"x\"]\n", 3,
                 "tie.t.joins", words);
  };
  expect(with_structure, "bed.sqare", {"the bed has no bar \"sqare\"", "nearest is \"bed.square\""});
  expect(with_structure, "chek", {"there is no bar, member, panel or part of a mesh \"chek\"", "nearest is \"cheek\""});
  expect(test::bench(), "clamp.flat", {"the case has no [clamp] with bars"});
  const std::string two = R"([bed]
length = "900 mm"
material = "S275JR"
[[bed.bar]]
name = "web"
shape = "round"
diameter = "30 mm"
at = ["15 mm", "-15 mm"]
[[bed.bar]]
name = "foot"
shape = "round"
diameter = "30 mm"
at = ["15 mm", "-150 mm"]
)";
  expect(two, "bed", {"the bed has several bars: web, foot", "as in \"bed.web\""});
}

} // namespace
} // namespace bedbow
