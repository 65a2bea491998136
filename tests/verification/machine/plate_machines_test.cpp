// Plates through the whole program: panels against closed forms, and machines whose bars are plates against the same
// machines with beam bars, where beam theory holds (length over depth at least 8).
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

const std::string shelf = R"(
title = "Shelf"
[material.plain]
E = "210 GPa"
nu = 0.3
density = "8000 kg/m^3"
[[panel]]
name = "shelf"
corner = ["0 mm", "0 mm", "0 mm"]
edge_a = ["1000 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "1000 mm", "0 mm"]
thickness = "10 mm"
material = "plain"
divisions = [24, 24]
[[dial]]
name = "middle"
on = "shelf"
at = ["500 mm", "500 mm", "0 mm"]
)";

std::string hold_edges(const std::string& along_x, const std::string& along_y) {
  std::string out;
  const auto hold = [&](const char* from, const char* to, const std::string& holds) {
    out += std::string("[[hold]]\nfrom = ") + from + "\nto = " + to + "\nholds = [" + holds + "]\n";
  };
  hold(R"(["0 mm", "0 mm", "0 mm"])", R"(["1000 mm", "0 mm", "0 mm"])", along_x);
  hold(R"(["0 mm", "1000 mm", "0 mm"])", R"(["1000 mm", "1000 mm", "0 mm"])", along_x);
  hold(R"(["0 mm", "0 mm", "0 mm"])", R"(["0 mm", "1000 mm", "0 mm"])", along_y);
  hold(R"(["1000 mm", "0 mm", "0 mm"])", R"(["1000 mm", "1000 mm", "0 mm"])", along_y);
  return out;
}

constexpr double D = 210e9 * 1e-6 / (12 * 0.91); // t = 10 mm

const std::string supported = hold_edges(R"("x", "y", "z", "ry")", R"("x", "y", "z", "rx")");
const std::string clamped = hold_edges(R"("x", "y", "z", "rx", "ry", "rz")", R"("x", "y", "z", "rx", "ry", "rz")");

TEST(PlateMachines, PanelUnderPressureAndUnderItsWeight) {
  const std::string book = "Timoshenko & Woinowsky-Krieger 1959, with Navier's shear term at t/a = 0.01";
  const Findings f = solved(shelf + supported + R"([[load]]
panel = "shelf"
pressure = "2 kPa"
)");
  record("B30", book, "panel, pressure, edges supported: middle", dial(f, "middle").z(), 0.00406446 * 2e3 / D * 1e3,
         5e-3, "mm");
  const Findings w = solved("gravity = true\n" + shelf + clamped);
  record("B32", book, "panel, own weight, edges clamped: middle", dial(w, "middle").z(),
         -0.00126785 * 8000 * 9.80665 * 0.01 / D * 1e3, 5e-3, "mm");
}

TEST(PlateMachines, StressAtTheFacesOfAPanel) {
  const Findings f = solved(shelf + supported + R"([[load]]
panel = "shelf"
pressure = "-2 kPa"
)");
  ASSERT_EQ(f.steps.at(0).fields.shells.size(), 1U);
  const ShellField& s = f.steps[0].fields.shells[0];
  std::size_t middle = 0;
  for (std::size_t i = 0; i < s.points.size(); ++i)
    if ((s.points[i] - Eigen::Vector3d(0.5, 0.5, 0)).norm() < 1e-9) middle = i;
  // Pressed down, the upper face is in compression: s = 6 M / t^2, M = 0.0478864 q a^2 both ways.
  const double sigma = 6 * 0.0478864 * 2e3 / 1e-4 / 1e6;
  record("B1", "Timoshenko & Woinowsky-Krieger 1959, Table 8", "upper face, principal stress",
         s.principal[middle][0] / 1e6, -sigma, 5e-3, "MPa");
  record("B1", "Timoshenko & Woinowsky-Krieger 1959, Table 8", "lower face, principal stress",
         s.principal[middle][2] / 1e6, sigma, 5e-3, "MPa");
  record("B1", "Timoshenko & Woinowsky-Krieger 1959, Table 8", "upper face, von Mises", s.von_mises[middle][0] / 1e6,
         sigma, 5e-3, "MPa");
}

// A hanger rod below the middle of a panel edge, and a load on a panel's corner: forces go through the common nodes.
TEST(PlateMachines, AMemberHangsOnAPanel) {
  const std::string hanger = R"(
[[member]]
name = "hanger"
from = ["500 mm", "500 mm", "0 mm"]
to = ["500 mm", "500 mm", "-100 mm"]
shape = "round"
diameter = "10 mm"
material = "plain"
[[load]]
at = ["500 mm", "500 mm", "-100 mm"]
force = ["0 N", "0 N", "-100 N"]
)";
  const Findings f = solved(shelf + supported + hanger);
  record("B3", "Timoshenko & Woinowsky-Krieger 1959, Table 23", "panel's middle under a hung weight",
         dial(f, "middle").z(), -0.01160084 * 100 / D * 1e3, 1e-2, "mm");
}

const std::string bed_and_clamp = R"(
title = "Bed and clamp"
[sheet]
material = "DC01"
thickness = "1 mm"
width = "600 mm"
centre = "450 mm"
flange = "25 mm"
inside_radius = "2 mm"
angle = "90 deg"
grip = "15 mm"
[bed]
length = "900 mm"
material = "S275JR"
[[bed.bar]]
name = "web"
shape = "rectangle"
width = "20 mm"
height = "100 mm"
at = ["10 mm", "-50 mm"]
[clamp]
length = "900 mm"
material = "S275JR"
nose = { bar = "spine", setback = "3 mm", land = "20 mm" }
[[clamp.bar]]
name = "spine"
shape = "rectangle"
width = "20 mm"
height = "60 mm"
at = ["13 mm", "31 mm"]
[[post]]
name = "left"
joins = ["bed.web", "clamp.spine"]
x = "0 mm"
y = "10 mm"
diameter = "12 mm"
class = "8.8"
free_length = "120 mm"
preload = "7 kN"
[[post]]
name = "right"
joins = ["bed.web", "clamp.spine"]
x = "900 mm"
y = "10 mm"
diameter = "12 mm"
class = "8.8"
free_length = "120 mm"
preload = "7 kN"
[[tie]]
joins = ["bed.web", "clamp.spine"]
at = ["0 mm", "10 mm", "0 mm"]
holds = ["x", "y", "rx", "rz"]
[[tie]]
joins = ["bed.web", "clamp.spine"]
at = ["900 mm", "10 mm", "0 mm"]
holds = ["y", "rx"]
[[support]]
bar = "bed.web"
x = "0 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
bar = "bed.web"
x = "900 mm"
holds = ["y", "z", "rx"]
[solve]
angles = ["0 deg", "90 deg"]
)";

std::string as_plates(const std::string& text) {
  return replaced(text, "shape = \"rectangle\"", "shape = \"rectangle\"\nmodel = \"plate\"");
}

TEST(PlateMachines, BedAndClampBowAlikeAsBeamsAndAsPlates) {
  const Findings beams = solved(bed_and_clamp), plates = solved(as_plates(bed_and_clamp));
  ASSERT_EQ(beams.steps.size(), plates.steps.size());
  for (std::size_t i = 0; i < beams.steps.size(); ++i)
    for (std::size_t body : {0U, 1U})
      record("", "the same machine with beam bars; length over depth 9 and 15",
             beams.steps[i].name + (body == 0 ? ", bed" : ", clamp") + " bow as plates",
             plates.steps[i].bow.bow[body] * 1e3, beams.steps[i].bow.bow[body] * 1e3, 0.03, "mm");
}

// A plate between beams: clamp as plate on a bed as beam lies between the two in all that is shared.
TEST(PlateMachines, BeamsAndPlatesMixInOneMachine) {
  const std::string mixed = replaced(bed_and_clamp, "width = \"20 mm\"\nheight = \"60 mm\"",
                                     "model = \"plate\"\nwidth = \"20 mm\"\nheight = \"60 mm\"");
  const Findings beams = solved(bed_and_clamp), both = solved(mixed);
  for (std::size_t body : {0U, 1U})
    record("", "the same machine with beam bars", std::string(body == 0 ? "bed" : "clamp") + " bow, clamp as a plate",
           both.steps.at(0).bow.bow[body] * 1e3, beams.steps.at(0).bow.bow[body] * 1e3, 0.03, "mm");
  record("", "equilibrium", "residual force over the greatest applied", both.steps.at(0).checks.equilibrium, 0, 1e-10);
}

} // namespace
} // namespace bedbow::verification
