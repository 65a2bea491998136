// The nose along the sheet: its force in all, the reserve of clamping and its opening, against statics and rigid
// bodies by hand. "The nose is off the sheet at 43 of 49 stations" was said of a folder whose nose pressed with 19 N/mm
// there: what the sheet's own lever puts on the nose did not count, and any pad without force counted as off.
#include "solver/findings/nose_hold.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

constexpr double L = 400, k = 1000; // sheet over the whole length [mm]; spring at either end of the clamp [N/mm]
constexpr double thickness = 1;     // of the sheet [mm]

std::string press(double x, double newton) {
  return "[[load]]\non = \"clamp.beam\"\nat = " + point({x, 30, 1}) + "\nforce = [\"0 N\", \"0 N\", " +
         quantity(-newton, "N") + "]\n";
}

std::string spring_at(double x) {
  return "[[tie]]\njoins = [\"clamp.beam\", \"ground\"]\nat = " + point({x, 30, 1}) +
         "\nholds = [\"z\"]\nstiffness = " + quantity(k, "N/mm") + "\n";
}

/// A rigid clamp on a rigid bed, pressed on the sheet by a weight at either end, which is what two posts without any
/// give would do; springs at the ends hold it where the sheet lifts it off. It can't turn about x.
/// \param nose further keys of the clamp: a crown, fingers.
std::string weighed_down(double left, double right, const std::string& extra = "", const std::string& nose = "") {
  const auto rigid_bar = [](const std::string& name, const std::string& at) {
    return "bar = [ { name = \"" + name +
           "\", shape = \"section\", A = \"1e6 m^2\", Iyy = \"1e6 m^4\", Izz = \"1e6 m^4\", J = \"1e6 m^4\", at = " +
           at + " } ]\n";
  };
  return R"([material.steel]
E = "210 GPa"
nu = 0.3
[material.blank]
E = "205 GPa"
nu = 0.3
yield = "250 MPa"
[sheet]
material = "blank"
thickness = )" +
         mm(thickness) + "\nwidth = " + mm(L) + "\ncentre = " + mm(L / 2) +
         R"(
flange = "20 mm"
inside_radius = "1 mm"
angle = "45 deg"
grip = "10 mm"
[bed]
length = )" +
         mm(L) + "\nmaterial = \"steel\"\n" + rigid_bar("ground", "[\"5 mm\", \"0 mm\"]") +
         "[clamp]\nlength = " + mm(L) +
         R"(
material = "steel"
nose = { bar = "beam", setback = "2 mm", land = "10 mm" }
)" + nose +
         rigid_bar("beam", "[\"30 mm\", \"1 mm\"]") +
         R"([[support]]
bar = "bed.ground"
x = "0 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[tie]]
joins = ["clamp.beam", "ground"]
at = )" + point({L / 2, 30, 1}) +
         "\nholds = [\"x\", \"y\", \"rx\", \"rz\"]\n" + spring_at(0) + spring_at(L) + press(0, left) + press(L, right) +
         R"([solve]
angles = ["0 deg", "45 deg"]
element_size = "10 mm"
)" + extra;
}

/// Sum over the stations of force per length times the length that each stands for [N].
double whole(const BendLine& line, const std::vector<double>& force) {
  double sum = 0;
  for (std::size_t i = 0; i < line.x.size(); ++i) {
    const double from = i == 0 ? line.x[i] : (line.x[i - 1] + line.x[i]) / 2;
    const double to = i + 1 == line.x.size() ? line.x[i] : (line.x[i] + line.x[i + 1]) / 2;
    if (std::isfinite(force[i])) sum += force[i] * (to - from);
  }
  return sum;
}

/// Upward force of joints on the first of what they join [N].
double upward(std::span<const JointResult> joints) {
  double sum = 0;
  for (const JointResult& j : joints) sum += j.force.z();
  return sum;
}

/// What the bent sheet's lever puts on the nose per length, from its moment by hand [N/m]: the apron's push, which
/// holds the moment on flange and set-back (20 and 2 mm above), and its grip.
double lever(const Findings& f, const StepResult& s, double flange = 0.020, double setback = 0.002) {
  const double c = std::cos(s.angle);
  return f.sheet->moment / (flange + setback * c) * c + f.sheet->grip;
}

// The weights press with 5 kN. All that comes down on the nose must be found along it, clamped and bent, whatever part
// of it the pads carry; the springs take what they are lifted by.
TEST(NoseHold, ForceInAllIsWhatPressesTheClampDown) {
  for (const double each : {2500.0, 1900.0}) { // with reserve, and without
    const Findings f = solved(weighed_down(each, each));
    ASSERT_EQ(f.steps.size(), 3U);
    for (const StepResult& s : f.steps) {
      const double down = 2 * each - upward(joints_of(s, JointKind::tie));
      record("", "statics: all that presses the clamp down", s.name + ": sum of force in all times length",
             whole(s.bend_line, s.bend_line.clamp_force), down, 1e-9, "N");
      const double by_lever = &s == &f.steps.front() ? 0 : lever(f, s) * L * 1e-3;
      // Their sum, since the reserve alone is 0 but for rounding where the springs take what is lifted.
      record("", "statics: all that presses the clamp down",
             s.name + ": reserve times length and the sheet's own lever, over all",
             (whole(s.bend_line, s.bend_line.clamp_reserve) + by_lever) / down, 1, 1e-9);
    }
  }
}

// One weight after another is taken off the clamp. The nose must be reported as off the sheet as soon as it opens by
// more than the default of 5 % of 1 mm, and not before; between the first opening and that a warning says that it has
// no reserve.
TEST(NoseHold, WeightTakenOffUntilTheNoseOpens) {
  const double balance = [] { // each weight that just holds the sheet down
    const Findings f = solved(weighed_down(3000, 3000));
    return lever(f, f.steps.at(1)) * L * 1e-3 / 2;
  }();
  for (const double above : {800.0, 100.0, 10.0, -10.0, -49.0, -51.0, -300.0}) {
    const Findings f = solved(weighed_down(balance + above, balance + above));
    const BendLine& line = f.steps.at(1).bend_line;
    const double opening = std::max(0.0, -above / k); // of a rigid clamp on its springs [mm]
    record("", "rigid clamp on springs: (lever - weight)/k", "opening of the nose", nose_hold(line).opening * 1e3,
           opening, 1e-6, "mm");
    const bool off = opening > 0.05 * thickness;
    EXPECT_EQ(nose_hold(line).lifted, off ? line.x.size() : 0) << above;
    EXPECT_TRUE(f.verdict.pass) << above << ": a warning, since the case gives no limit";
    const auto speaks = [](const std::vector<std::string>& list, const char* what) {
      return std::ranges::any_of(list, [&](const std::string& s) { return s.find(what) != std::string::npos; });
    };
    EXPECT_EQ(speaks(f.warnings, "the nose is off the sheet in step bend 0 deg"), off) << above;
    EXPECT_EQ(speaks(f.warnings, "no clamping reserve in step bend 0 deg between x = 0 and 400 mm"),
              opening > 0 && !off)
        << above;
    if (opening > 0) {
      for (const double force : line.clamp_force) EXPECT_NEAR(force, lever(f, f.steps[1]), 1e-6);
    }
  }
}

TEST(NoseHold, LimitIsTheCases) {
  const Findings f = solved(weighed_down(3000, 3000));
  const double each = lever(f, f.steps.at(1)) * L * 1e-3 / 2 - 30; // opens by 0.03 mm
  EXPECT_TRUE(solved(weighed_down(each, each)).verdict.pass);
  const Findings strict = solved(weighed_down(each, each, "[limits]\nnose_opening = \"0.02 mm\"\n"));
  EXPECT_FALSE(strict.verdict.pass);
  ASSERT_EQ(strict.verdict.reasons.size(), 1U);
  EXPECT_EQ(strict.verdict.reasons.front().check, "nose opening");
  EXPECT_NEAR(strict.verdict.reasons.front().value, 0.03e-3, 1e-9);
  EXPECT_TRUE(strict.steps.at(1).bend_line.lifted.front());
  const auto stated = [](const Findings& g) {
    return std::ranges::any_of(g.assumptions,
                               [](const std::string& s) { return s.find("off the sheet") != std::string::npos; });
  };
  EXPECT_TRUE(stated(f)) << "the default is an assumption";
  EXPECT_FALSE(stated(strict)) << "the case's own limit is not";
}

// Uneven weights: the rigid clamp tips, each end rises by what it lacks over its spring, and the nose opens along a
// straight line; a crown on the nose fills its height of it.
TEST(NoseHold, TippedClampOpensAlongALine) {
  for (const double crown : {0.0, 0.1}) {
    const std::string strip = "crown = { x = [" + mm(0) + ", " + mm(L / 2) + ", " + mm(L) + "], height = [" + mm(0) +
                              ", " + mm(crown) + ", " + mm(0) + "] }\n";
    const double left = 1500, right = 1900;
    const Findings f = solved(weighed_down(left, right, "", strip));
    const StepResult& s = f.steps.at(1);
    const double half = lever(f, s) * L * 1e-3 / 2;
    for (std::size_t i = 0; i < s.bend_line.x.size(); ++i) {
      const double x = s.bend_line.x[i] * 1e3;
      const double rise = (half - left) / k * (1 - x / L) + (half - right) / k * x / L;
      const double filled = crown * (1 - std::abs(x - L / 2) / (L / 2));
      ASSERT_GT(rise, filled);
      ASSERT_NEAR(s.bend_line.nose_opening[i] * 1e3, rise - filled, 1e-6) << "x = " << x;
    }
    record("", "rigid clamp tipping on two springs", "opening at the left end", s.bend_line.nose_opening.front() * 1e3,
           (half - left) / k, 1e-6, "mm");
  }
}

// A screw 3 mm from the sheet's end makes a station there, and a fine mesh makes stations closer than the pads stand:
// `clamp_N_per_mm` was null at those, in the midst of a nose that presses all along.
TEST(NoseHold, EveryStationUnderTheNoseHasItsForce) {
  for (const std::string& extra : {press(3, 0) + press(L - 3, 0) + press(201, 0), std::string()}) {
    std::string text = weighed_down(2500, 2500, extra);
    if (extra.empty()) text = replaced(text, "element_size = \"10 mm\"", "element_size = \"3 mm\"");
    const Findings f = solved(text);
    for (const StepResult& s : f.steps) {
      for (std::size_t i = 0; i < s.bend_line.x.size(); ++i)
        EXPECT_GT(s.bend_line.clamp_reserve[i], 0) << "x = " << s.bend_line.x[i];
      for (const double opening : s.bend_line.nose_opening) EXPECT_EQ(opening, 0);
      record("", "statics: all that presses the clamp down",
             s.name + ": sum of force in all times length, close stations", whole(s.bend_line, s.bend_line.clamp_force),
             5000 - upward(joints_of(s, JointKind::tie)), 1e-9, "N");
    }
  }
}

// Fingers press at three places each; the stations between have their share. The third finger of four is away.
TEST(NoseHold, FingersShareTheirForceOut) {
  const std::string fingers =
      "fingers = { starts = [\"0 mm\", \"100 mm\", \"300 mm\"], widths = [\"100 mm\", \"100 mm\", \"100 mm\"], reach = "
      "\"20 mm\", thickness = \"10 mm\", material = \"steel\" }\n";
  const Findings f = solved(weighed_down(2500, 2500, "", fingers));
  for (const StepResult& s : f.steps) {
    const BendLine& line = s.bend_line;
    for (std::size_t i = 0; i < line.x.size(); ++i) {
      const double x = line.x[i] * 1e3;
      const bool gap = x > 206 && x < 294; // the stretch of the stations at 200 and 300 reaches half under a finger
      EXPECT_EQ(std::isnan(line.clamp_force[i]), gap) << "x = " << x;
      EXPECT_EQ(std::isnan(line.nose_opening[i]), gap) << "x = " << x;
    }
    record("", "statics: all that presses the clamp down", s.name + ": sum of force in all times length, fingers",
           whole(line, line.clamp_force), 5000 - upward(joints_of(s, JointKind::tie)), 1e-9, "N");
  }
}

// The hive-lid folder, whose nose was "off the sheet" at most stations: the clamp's balance along z gives the nose's
// force in all from posts and cams, and where the pads carry nothing the nose presses with the sheet's lever
// (181.9/28.5 + 181.9/15 = 18.5 N/mm at 0 deg for 25 mm of flange, 3.5 of set-back and 15 of grip).
TEST(NoseHold, HiveLidPressesWithTheSheetsLever) {
  const Findings f = solved(replaced(project_file("cases/hive-lid/case.toml"), "grip = \"15 mm\"",
                                     "grip = \"15 mm\"\nmoment_law = \"rigid-plastic\""));
  EXPECT_GT(nose_hold(f.steps.at(1).bend_line).without_reserve, 0U);
  for (const StepResult& s : f.steps) {
    const bool bent = &s != &f.steps.front();
    const BendLine& line = s.bend_line;
    const double down = upward(joints_of(s, JointKind::post)) +
                        upward(joints_of(s, JointKind::cam)); // what they pull the bed up by, less what the cams press
    record("", "statics: posts less cams", s.name + ": sum of the nose's force in all times length",
           whole(line, line.clamp_force), down, 1e-6, "N");
    for (std::size_t i = 0; i < line.x.size(); ++i) {
      EXPECT_EQ(line.clamp_reserve[i] > 0, line.nose_opening[i] == 0) << "x = " << line.x[i];
      EXPECT_NEAR(line.clamp_force[i] - line.clamp_reserve[i], bent ? lever(f, s, 0.025, 0.0035) : 0, 1e-6)
          << "x = " << line.x[i];
    }
  }
}

// The same folder with less and less preload on its studs: first nothing is left at more stations, then the nose opens.
// Whether it is reported must follow the opening alone, and statics holds in every state.
TEST(NoseHold, HiveLidWithLessAndLessPreload) {
  const std::string text = project_file("cases/hive-lid/case.toml");
  double before = 0;
  for (const double kilonewton : {15.0, 10.0, 5.0, 2.0, 0.5}) {
    const Findings f = solved(replaced(text, "preload = \"15 kN\"", "preload = " + quantity(kilonewton, "kN")));
    double opening = 0;
    for (const StepResult& s : f.steps) {
      const BendLine& line = s.bend_line;
      record("", "statics: posts less cams", s.name + ": sum of the nose's force in all times length, less preload",
             whole(line, line.clamp_force),
             upward(joints_of(s, JointKind::post)) + upward(joints_of(s, JointKind::cam)), 1e-6, "N");
      for (std::size_t i = 0; i < line.x.size(); ++i)
        EXPECT_EQ(line.lifted[i], line.nose_opening[i] > 0.05 * 1.5e-3) << "x = " << line.x[i];
      opening = std::max(opening, nose_hold(line).opening);
    }
    const bool reported = std::ranges::any_of(
        f.warnings, [](const std::string& s) { return s.find("the nose is off the sheet") != std::string::npos; });
    EXPECT_EQ(reported, opening > 0.05 * 1.5e-3) << kilonewton << " kN: " << opening * 1e3 << " mm";
    EXPECT_GT(opening, before) << kilonewton << " kN";
    before = opening;
  }
  EXPECT_GT(before, 0.05 * 1.5e-3) << "with next to no preload the sheet lifts the nose";
}

} // namespace
} // namespace bedbow::verification
