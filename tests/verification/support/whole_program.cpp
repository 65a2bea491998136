#include "tests/verification/support/whole_program.h"

#include "io/files/errors.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace bedbow::verification {

namespace {

/// The only bar's centroid line as a place: [y, z].
constexpr const char* sample_place = "[\"10 mm\", \"-30 mm\"]";

std::string bar_case(const std::string& length, const std::string& section, const std::string& extra) {
  return R"(title = "sample bar"
[material.sample]
E = "210 GPa"
nu = 0.3
density = "7850 kg/m^3"
[bed]
length = )" +
         length + R"(
material = "sample"
[[bed.bar]]
name = "bar"
)" + section +
         "at = " + std::string(sample_place) + "\n" + extra;
}

} // namespace

Machine machine_of(const std::string& text) {
  return read_case_text(text, builtin_registries()).machine;
}

Findings solved(const Machine& machine) {
  Findings f = analyse(machine, builtin_registries());
  EXPECT_EQ(f.status, Status::ok) << f.trouble;
  if (f.steps.empty()) throw std::runtime_error("nothing was solved: " + f.trouble);
  return f;
}

Findings solved(const std::string& text) {
  return solved(machine_of(text));
}

std::string project_file(const std::string& path) {
  std::ifstream in(std::string(BEDBOW_SOURCE_DIR "/") + path);
  if (!in) throw std::runtime_error("can't read " + path);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  std::size_t at = text.find(what);
  if (at == std::string::npos) throw std::runtime_error("the text has no " + what);
  for (; at != std::string::npos; at = text.find(what, at + by.size())) text.replace(at, what.size(), by);
  return text;
}

std::string quantity(double value, const std::string& unit) {
  char text[64];
  std::snprintf(text, sizeof text, "\"%.17g %s\"", value, unit.c_str());
  return text;
}

std::string mm(double value) {
  return quantity(value, "mm");
}

std::string point(const Eigen::Vector3d& p) {
  return "[" + mm(p.x()) + ", " + mm(p.y()) + ", " + mm(p.z()) + "]";
}

Eigen::Vector3d dial(const Findings& findings, const std::string& name, std::size_t step) {
  for (const DialResult& d : findings.steps.at(step).dials)
    if (d.name == name) return d.movement * 1e3;
  ADD_FAILURE() << "no dial " << name;
  return Eigen::Vector3d::Constant(std::nan(""));
}

const JointResult& joint(std::span<const JointResult> list, const std::string& name) {
  for (const JointResult& j : list)
    if (j.name == name) return j;
  throw std::out_of_range("no joint " + name);
}

const BarField& field(const Findings& findings, const std::string& name, std::size_t step) {
  for (const BarField& b : findings.steps.at(step).fields.bars)
    if (b.name == name) return b;
  throw std::out_of_range("no bar " + name);
}

SectionForces forces_at(const BarField& bar, double x) {
  const bool member = bar.owner.kind == Ref::Kind::member;
  for (std::size_t i = 0; i < bar.points.size(); ++i) {
    const double at = member ? (bar.points[i] - bar.points.front()).norm() : bar.points[i].x();
    if (std::abs(at - x) < 1e-7) return bar.forces[i][1];
  }
  throw std::out_of_range("no station of " + bar.name + " there");
}

std::string sample_bar(const std::string& extra) {
  return bar_case("\"1000 mm\"", R"(shape = "rectangle"
model = "beam"
width = "20 mm"
height = "60 mm"
)",
                  extra);
}

std::string slender_bar(const std::string& extra, double length) {
  return bar_case(mm(length),
                  R"(shape = "section"
A = "1200 mm^2"
Iyy = "360000 mm^4"
Izz = "40000 mm^4"
J = "126000 mm^4"
Ay = "1e6 m^2"
Az = "1e6 m^2"
)",
                  extra);
}

std::string support(const std::string& name, double x, const std::string& holds) {
  return "[[support]]\nname = \"" + name + "\"\nbar = \"bed.bar\"\nat = [" + mm(x) +
         ", \"10 mm\", \"-30 mm\"]\nholds = [" + holds + "]\n";
}

std::string dial_at(const std::string& name, double x) {
  return "[[dial]]\nname = \"" + name + "\"\non = \"bed.bar\"\nat = " + point({x, 10, -30}) + "\n";
}

std::string force_at(double x, double newton) {
  return "[[load]]\non = \"bed.bar\"\nat = " + point({x, 10, -30}) + "\nforce = [\"0 N\", \"0 N\", " +
         quantity(newton, "N") + "]\n";
}

std::string uniform_load(double length, double newton_per_mm) {
  return "[[load]]\non = \"bed.bar\"\nfrom = " + point({0, 10, -30}) + "\nto = " + point({length, 10, -30}) +
         "\nper_length = [\"0 N/mm\", \"0 N/mm\", " + quantity(newton_per_mm, "N/mm") + "]\n";
}

} // namespace bedbow::verification
