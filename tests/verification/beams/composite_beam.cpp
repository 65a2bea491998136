#include "tests/verification/beams/composite_beam.h"

namespace bedbow::verification::composite {

namespace {

std::string line_load(double from, double to, double per_length) {
  const auto place = [](double x) { return "[\"" + std::to_string(x) + " mm\", \"0 mm\", \"0 mm\"]"; };
  return "[[load]]\non = \"bed.flange\"\nfrom = " + place(from) + "\nto = " + place(to) +
         "\nper_length = [\"0 N/mm\", \"0 N/mm\", \"" + std::to_string(per_length) + " N/mm\"]\n";
}

} // namespace

std::string held(const std::string& x, const std::string& what) {
  std::string text;
  for (const char* bar : {"flange", "web"})
    text += "[[support]]\nbar = \"bed." + std::string(bar) + "\"\nx = \"" + x + "\"\nholds = [" + what + "]\n";
  return text;
}

std::string on_two_supports() {
  const std::string fork = R"("y", "z", "rx")";
  return held("0 mm", fork) + held("4000 mm", fork) +
         R"([[tie]]
joins = ["bed.web", "ground"]
x = "0 mm"
holds = ["x"]
)";
}

std::string t_section(const std::string& joined, const std::string& load, const std::string& held) {
  return R"(
title = "T-section on screws"
[material.flange]
E = "12000 MPa"
G = "1e9 MPa"
[material.web]
E = "8000 MPa"
G = "1e9 MPa"
[bed]
length = "4000 mm"
edge = { bar = "flange" }
bar = [
  { name = "flange", material = "flange", shape = "rectangle", model = "beam", width = "300 mm", height = "50 mm", at = ["0 mm", "-25 mm"] },
  { name = "web", material = "web", shape = "rectangle", model = "beam", width = "50 mm", height = "150 mm", at = ["0 mm", "-125 mm"] },
]
[solve]
element_size = "50 mm"
[[dial]]
name = "mid"
on = "bed.web"
at = ["2000 mm", "0 mm", "-125 mm"]
[[dial]]
name = "end"
on = "bed.web"
at = ["4000 mm", "0 mm", "-125 mm"]
)" + held +
         joined + load;
}

std::string screws(double per_length) {
  return R"([[screws]]
joins = ["bed.flange", "bed.web"]
size = "M10"
class = "8.8"
first = "50 mm"
pitch = "100 mm"
shear_stiffness = ")" +
         std::to_string(per_length * pitch) + " N/mm\"\n";
}

std::string uniform_load(double per_length) {
  return line_load(0, L, per_length);
}

std::string force_down(const std::string& x, double newton) {
  return "[[load]]\non = \"bed.flange\"\nat = [\"" + x + "\", \"0 mm\", \"0 mm\"]\nforce = [\"0 N\", \"0 N\", \"" +
         std::to_string(-newton) + " N\"]\n";
}

std::string wave_load(double peak, double from, double to) {
  constexpr int pieces = 80;
  const double angle = (to - from) / pieces;
  std::string out;
  for (int i = 0; i < pieces; ++i)
    out += line_load(L * i / pieces, L * (i + 1) / pieces,
                     peak * (std::cos(from + angle * i) - std::cos(from + angle * (i + 1))) / angle);
  return out;
}

double sunk(const Findings& f, const std::string& name) {
  return -dial(f, name).z();
}

} // namespace bedbow::verification::composite
