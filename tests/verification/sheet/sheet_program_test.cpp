// What a case says of its sheet and its studs, against the tables: moment, springback, proof load.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

/// Stands the clamp as far back as the bend needs: thickness + inside radius [mm].
std::string set_back(const std::string& text, double setback) {
  return replaced(replaced(text, "setback = \"2.5 mm\"", "setback = " + mm(setback)), "at = [\"25 mm\"",
                  "at = [" + mm(setback + 70));
}

/// The cross-check folder with another sheet. Sizes in mm.
SheetResult bent(const std::string& material, double thickness, double inside_radius, const std::string& law) {
  std::string text = project_file("tests/cases/folder-x.toml");
  text = replaced(text, "material = \"sheetx\"\nthickness = \"1 mm\"",
                  "material = \"" + material + "\"\nmoment_law = \"" + law + "\"\nthickness = " + mm(thickness));
  text = replaced(text, "inside_radius = \"1.5 mm\"", "inside_radius = " + mm(inside_radius));
  text = set_back(text, thickness + inside_radius);
  return *solved(text + R"([material.H]
E = "205 GPa"
nu = 0.3
yield = "250 MPa"
)")
              .sheet;
}

TEST(SheetThroughTheProgram, FullPlasticMoment) {
  const std::string source =
      "Marciniak, Duncan & Hu 2nd ed. 2002, eqs 6.6, 6.21 (text-id.123dok.com/document/ky6pn6m7q)";
  for (const auto& [t, moment] : {std::pair{1.0, 72.1688}, {1.5, 162.3798}, {2.0, 288.6751}, {3.0, 649.5191}})
    record("H2", source, "moment, Y = 250, t = " + std::to_string(t).substr(0, 3),
           bent("H", t, 2, "rigid-plastic").moment, moment, 1e-6, "N mm/mm");
  const SheetResult s = bent("H", 2, 2, "rigid-plastic");
  record("H1", source, "plane-strain factor S/Y", s.moment / (250 * 4 / 4.0), 1.154701, 1e-6);
  record("", "contract: F = m / flange", "apron's push times the flange over the moment", s.apron * 0.022 / s.moment, 1,
         1e-12);
  record("", "contract: m / grip", "grip times its depth over the moment", s.grip * 0.014 / s.moment, 1, 1e-12);
}

TEST(SheetThroughTheProgram, PowerLawMoment) {
  const std::string source = "Marciniak, Duncan & Hu eqs 6.13-6.14 with K, n of Kalpakjian & Schmid Table 2.3";
  for (const auto& [name, moment] : {std::pair{"DC01", 237.673}, {"304", 439.919}, {"5052-O", 113.125}})
    record("H4", source, std::string("moment, t = 1.5, rho = 2.25, ") + name, bent(name, 1.5, 1.5, "power-law").moment,
           moment, 0.0005 / moment, "N mm/mm");
}

// Gardiner's strip is in uniaxial stress: nu = 0 and a yield less by sqrt(3)/2 make the program's plane strain the
// same.
double springback_ratio(double radius, double thickness, double yield, double E) {
  std::string text = project_file("tests/cases/folder-x.toml");
  text = replaced(text, "material = \"sheetx\"\nthickness = \"1 mm\"",
                  "material = \"strip\"\nthickness = " + mm(thickness));
  text = replaced(text, "inside_radius = \"1.5 mm\"", "inside_radius = " + mm(radius - thickness / 2));
  text = set_back(text, radius + thickness / 2);
  // The apron that is meant for a thinner sheet is held straighter by both its pins.
  text = replaced(text, "x = \"800 mm\"\npin", "x = \"800 mm\"\nend_float = \"0 mm\"\npin");
  const Findings f = solved(text + "[material.strip]\nE = " + quantity(E, "MPa") +
                            "\nnu = 0\nyield = " + quantity(yield * std::numbers::sqrt3 / 2, "MPa") + "\n");
  const double wanted = std::numbers::pi / 2;
  return wanted / (wanted + f.sheet->springback.arc);
}

TEST(SheetThroughTheProgram, Springback) {
  const std::string source =
      "F.J. Gardiner, Trans. ASME 79 (1957) 1-9; from Marciniak, Duncan & Hu eqs 6.22, 6.23 (derived)";
  record("H6", source, "Ri/Rf, Ri = 1.5, t = 1.5, Y = 250, E = 205e3", springback_ratio(1.5, 1.5, 250, 205e3),
         0.9963415, 1e-7);
  record("H6", source, "Ri/Rf, Ri = 10, t = 1, Y = 250, E = 205e3", springback_ratio(10, 1, 250, 205e3), 0.9634219,
         1e-7);
  record("H6", source, "Ri/Rf, Ri = 20, t = 1.5, Y = 193, E = 70e3", springback_ratio(20, 1.5, 193, 70e3), 0.8899130,
         1e-7);
  record("H5", source, "4x^3 - 3x + 1 at x = 0.25", springback_ratio(10, 1, 5000, 200e3), 4 / 64.0 - 0.75 + 1, 1e-12);
}

/// Proof load [kN] that a post's own check says while clamping, for a stud of that size and class.
double proof_load(const std::string& size, const std::string& grade) {
  std::string text = project_file("tests/cases/folder-x.toml");
  text = replaced(text, "diameter = \"20 mm\"", "diameter = \"" + size + "\"");
  text = replaced(text, "class = \"8.8\"", "class = \"" + grade + "\"");
  text = replaced(text, "preload = \"7 kN\"", "preload = \"1 kN\"");
  const JointResult post = joint(joints_of(solved(text).steps.front(), JointKind::post), "left");
  for (const Check& c : post.checks)
    if (c.what == "proof load") return c.allowed.value * 1e-3;
  ADD_FAILURE() << "no check of the proof load";
  return 0;
}

TEST(StudsThroughTheProgram, ProofLoads) {
  const std::string loads = "proof stress (ISO 898-1:2013) times stress area (ISO 724)";
  const std::pair<const char*, double> sizes[] = {{"M6", 11.67},  {"M8", 21.23},  {"M10", 33.63},
                                                  {"M12", 48.87}, {"M16", 90.87}, {"M20", 146.9}};
  for (const auto& [size, load] : sizes) // four digits
    record("I7", loads, std::string("proof load, ") + size + " 8.8", proof_load(size, "8.8"), load, 5e-4, "kN");
  const std::tuple<const char*, const char*, double> grades[] = {
      {"I3", "4.6", 225}, {"I3", "5.8", 380},  {"I3", "6.8", 440}, {"I1", "8.8", 580},
      {"I3", "9.8", 650}, {"I2", "10.9", 830}, {"I2", "12.9", 970}};
  for (const auto& [id, grade, stress] : grades) // 57.99 mm^2 has four digits
    record(id, "ISO 898-1:2013 Table 3", std::string("proof stress from M10, ") + grade,
           proof_load("M10", grade) * 1e3 / 57.99, stress, 1e-4, "MPa");
  const std::pair<const char*, double> areas[] = {{"M6", 20.12},  {"M8", 36.61},  {"M10", 57.99}, {"M12", 84.27},
                                                  {"M14", 115.4}, {"M16", 156.7}, {"M20", 244.8}, {"M24", 352.5}};
  for (const auto& [size, area] : areas) // four digits
    record(area < 100 ? "I4" : "I5", "ISO 898-1 / ISO 724", std::string("stress area, ") + size,
           proof_load(size, "10.9") * 1e3 / 830, area, 5e-4, "mm^2");
}

// Two M20 studs of 120 mm from ground to a bar that only they keep from going sideways, 300 N at each: the moment at
// either end is V L/2 = 300 N * 60 mm, on the circle of the stress area of 244.8 mm^2 (four digits): d = 17.655 mm,
// W = pi d^3/32 = 540.3 mm^3. A stiffness of the stud other than that of the machine's spring would give another moment
// from the same movement.
TEST(StudsThroughTheProgram, BendingFromSidewaysForce) {
  std::string text = support("left", 0, "\"x\", \"z\", \"rx\"") + support("right", 1000, "\"z\", \"rx\"");
  for (const double x : {200.0, 800.0}) {
    const std::string at = point({x, 10, -30});
    text += "[[post]]\nname = \"" + std::string(x < 500 ? "left" : "right") +
            "\"\njoins = [\"ground\", \"bed.bar\"]\nat = " + at +
            R"(
diameter = "M20"
class = "8.8"
free_length = "120 mm"
[[load]]
on = "bed.bar"
at = )" + at +
            "\nforce = [\"0 N\", \"300 N\", \"0 N\"]\n";
  }
  const Findings f = solved(sample_bar(text));
  EXPECT_EQ(joints_of(f.steps.front(), JointKind::post).size(), 2U);
  int compared = 0;
  for (const JointResult& post : joints_of(f.steps.front(), JointKind::post))
    for (const Check& c : post.checks)
      if (c.what == "stud" && ++compared)
        record("", "V L/2 over W of the stress area (I5)", "stud stress from 300 N sideways, " + post.name,
               c.actual * 1e-6, 300 * 60 / 540.28, 5e-4, "MPa");
  EXPECT_EQ(compared, 2);
}

} // namespace
} // namespace bedbow::verification
