// Forces of plain holds against statics and closed forms.
#include "tests/verification/record.h"
#include "tests/verification/whole_program.h"
#include <gtest/gtest.h>

namespace bedbow::verification {

namespace {

const std::string steel = "[material.steel]\nE = \"210 GPa\"\nnu = 0.3\ndensity = \"7850 kg/m^3\"\n";

std::string post(const std::string& extra) {
  return "[[member]]\nname = \"post\"\nfrom = [\"0 mm\", \"0 mm\", \"0 mm\"]\nto = [\"0 mm\", \"0 mm\", \"500 mm\"]\n"
         "shape = \"round\"\ndiameter = \"20 mm\"\nmaterial = \"steel\"\n" +
         extra;
}

std::string hold(const std::string& where, const std::string& holds) {
  return "[[hold]]\n" + where + "\nholds = [" + holds + "]\n";
}

} // namespace

// A post of 500 mm, held fast at its foot: what pushes its top comes out at the foot, force and moment.
TEST(HoldForces, FootOfAPost) {
  const Findings f =
      solved(steel + post("") + hold("at = [\"0 mm\", \"0 mm\", \"0 mm\"]", R"("x", "y", "z", "rx", "ry", "rz")") +
             "[[load]]\nat = [\"0 mm\", \"0 mm\", \"500 mm\"]\nforce = [\"30 N\", \"-40 N\", \"-100 N\"]\n");
  const JointResult& r = joint(f.steps.front().supports, "hold 1");
  record("", "statics", "foot of a post, x", r.force.x(), -30, 1e-9, "N");
  record("", "statics", "foot of a post, y", r.force.y(), 40, 1e-9, "N");
  record("", "statics", "foot of a post, z", r.force.z(), 100, 1e-9, "N");
  record("", "statics", "foot of a post, about x", r.moment.x(), -20, 1e-9, "N m"); // F_y -40 N at 0.5 m
  record("", "statics", "foot of a post, about y", r.moment.y(), -15, 1e-9, "N m");
  record("", "statics", "foot of a post, about z", r.moment.z(), 0, 1e-9, "N m");
}

// A3: clamped at both ends under a uniform load, here self-weight-like 1 N/mm over 800 mm: q L/2 and q L^2/12 at
// either.
TEST(HoldForces, ClampedBeam) {
  const Findings f = solved(
      steel +
      "[[member]]\nname = \"beam\"\nfrom = [\"0 mm\", \"0 mm\", \"0 mm\"]\nto = [\"800 mm\", \"0 mm\", \"0 mm\"]\n"
      "shape = \"rectangle\"\nwidth = \"20 mm\"\nheight = \"60 mm\"\nmaterial = \"steel\"\n" +
      hold("at = [\"0 mm\", \"0 mm\", \"0 mm\"]", R"("x", "y", "z", "rx", "ry", "rz")") +
      hold("at = [\"800 mm\", \"0 mm\", \"0 mm\"]", R"("y", "z", "rx", "ry", "rz")") +
      "[[load]]\nfrom = [\"0 mm\", \"0 mm\", \"0 mm\"]\nto = [\"800 mm\", \"0 mm\", \"0 mm\"]\n"
      "per_length = [\"0 N/mm\", \"0 N/mm\", \"-1 N/mm\"]\n");
  for (const auto& [name, sign] : {std::pair{"hold 1", -1.0}, {"hold 2", 1.0}}) {
    const JointResult& r = joint(f.steps.front().supports, name);
    record("A3", "clamped beam under uniform load: q L/2, q L^2/12", std::string("force, ") + name, r.force.z(), 400,
           1e-9, "N");
    record("A3", "clamped beam under uniform load: q L/2, q L^2/12", std::string("moment, ") + name, r.moment.y(),
           sign * 800.0 * 0.8 / 12, 1e-9, "N m");
  }
}

// A plate held along one edge, under pressure: the edge brings the whole load, and its moment about the edge.
TEST(HoldForces, EdgeOfAPlate) {
  const Findings f = solved(
      steel +
      "[[panel]]\nname = \"shelf\"\ncorner = [\"0 mm\", \"0 mm\", \"0 mm\"]\nedge_a = [\"300 mm\", \"0 mm\", \"0 "
      "mm\"]\n"
      "edge_b = [\"0 mm\", \"200 mm\", \"0 mm\"]\nthickness = \"6 mm\"\nmaterial = \"steel\"\ndivisions = [6, 4]\n" +
      hold("from = [\"0 mm\", \"0 mm\", \"0 mm\"]\nto = [\"300 mm\", \"0 mm\", \"0 mm\"]",
           R"("x", "y", "z", "rx", "ry", "rz")") +
      "[[load]]\npanel = \"shelf\"\npressure = \"-2 kPa\"\n");
  const JointResult& r = joint(f.steps.front().supports, "hold 1");
  record("", "statics", "edge of a shelf, z", r.force.z(), 2000 * 0.3 * 0.2, 1e-9, "N");
  record("", "statics", "edge of a shelf, about x", r.moment.x(), 2000 * 0.3 * 0.2 * 0.1, 1e-9, "N m");
  record("", "statics", "edge of a shelf, about y through its middle", r.moment.y(), 0, 1e-7, "N m");
}

} // namespace bedbow::verification
