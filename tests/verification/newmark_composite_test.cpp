// Two bars on a row of screws, simply supported: partial composite action between two bars that only lie on each other
// and one that is welded. Case text in, dial out: the whole program but for the command line.
#include "io/case_reader.h"
#include "solver/analysis.h"

#include "tests/verification/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

namespace bedbow {
namespace {

using verification::record;

constexpr const char* source = "Newmark, Siess & Viest, Proc. SESA 9 (1951); Girhammar, IJMS 51 (2009) 515-530";

// The T-section of references F7 (data as in Girhammar's papers, from memory): 300 x 50 on a web 50 x 150, N and mm.
constexpr double E1 = 12000, A1 = 300 * 50, I1 = 300. * 50 * 50 * 50 / 12;
constexpr double E2 = 8000, A2 = 50 * 150, I2 = 50. * 150 * 150 * 150 / 12;
constexpr double r = 100, L = 4000, pitch = L / 40, slip = 50; // slip modulus per length [N/mm^2]
constexpr double EI0 = E1 * I1 + E2 * I2;
constexpr double EIfull = EI0 + E1 * A1 * E2 * A2 / (E1 * A1 + E2 * A2) * r * r;

// Mid deflection under a uniform load q, and under a force P at mid-span (F4, F5: solutions of Newmark's equation).
struct Newmark {
  double alpha;
  explicit Newmark(double k)
      : alpha(std::sqrt(k * (1 / (E1 * A1) + 1 / (E2 * A2) + r * r / EI0))) {}
  [[nodiscard]] double uniform(double q) const {
    const double a = alpha * L;
    return 5 * q * std::pow(L, 4) / (384 * EIfull) +
           (EIfull / EI0 - 1) * q / (std::pow(alpha, 4) * EIfull) * (1 / std::cosh(a / 2) - 1 + a * a / 8);
  }
  [[nodiscard]] double mid(double P) const {
    return P * std::pow(L, 3) / (48 * EIfull) +
           (EIfull / EI0 - 1) * P / (alpha * alpha * EIfull) * (L / 4 - std::tanh(alpha * L / 2) / (2 * alpha));
  }
};

// Both bars stand on supports at both ends. Shear does not bend Newmark's bars, so G is out of all proportion.
std::string t_section(const std::string& joined, const std::string& load) {
  std::string text = R"(
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
  { name = "flange", material = "flange", shape = "rectangle", width = "300 mm", height = "50 mm", at = ["0 mm", "-25 mm"] },
  { name = "web", material = "web", shape = "rectangle", width = "50 mm", height = "150 mm", at = ["0 mm", "-125 mm"] },
]
[solve]
element_size = "50 mm"
[[dial]]
name = "mid"
on = "bed.web"
at = ["2000 mm", "0 mm", "-125 mm"]
)";
  for (const char* bar : {"flange", "web"})
    for (const char* x : {"0 mm", "4000 mm"})
      text +=
          "[[support]]\nbar = \"bed." + std::string(bar) + "\"\nx = \"" + x + "\"\nholds = [\"y\", \"z\", \"rx\"]\n";
  text += "[[tie]]\njoins = [\"bed.web\", \"ground\"]\nx = \"0 mm\"\nholds = [\"x\"]\n";
  return text + joined + load;
}

std::string screws(double per_length) {
  return "[[screws]]\njoins = [\"bed.flange\", \"bed.web\"]\nsize = \"M10\"\nclass = \"8.8\"\n"
         "first = \"50 mm\"\npitch = \"100 mm\"\nshear_stiffness = \"" +
         std::to_string(per_length * pitch) + " N/mm\"\n";
}

const std::string weld = "[[weld]]\njoins = [\"bed.flange\", \"bed.web\"]\n";
const std::string uniform =
    "[[load]]\non = \"bed.flange\"\nfrom = [\"0 mm\", \"0 mm\", \"0 mm\"]\n"
    "to = [\"4000 mm\", \"0 mm\", \"0 mm\"]\nper_length = [\"0 N/mm\", \"0 N/mm\", \"-1 N/mm\"]\n";
const std::string at_mid = "[[load]]\non = \"bed.flange\"\nat = [\"2000 mm\", \"0 mm\", \"0 mm\"]\n"
                           "force = [\"0 N\", \"0 N\", \"-1000 N\"]\n";

Findings solved(const std::string& text) {
  const Registries registries = builtin_registries();
  Findings f = analyse(read_case_text(text, registries).machine, registries);
  EXPECT_EQ(f.status, Status::ok) << f.trouble;
  return f;
}

double mid_deflection(const Findings& f) {
  return f.steps.empty() ? 0 : -f.steps.front().dials.front().movement.z() * 1e3;
}

// Screws at L/40 against a smeared connection.
constexpr double discrete = 0.005;
// Welds join the bars at their stations, here every L/80: a quarter of what rigid screws at L/40 leave (1.4e-3).
constexpr double welded_at_stations = 5e-4;

TEST(NewmarkComposite, UniformLoad) {
  record("F7", source, "w mid, T-section on screws at L/40", mid_deflection(solved(t_section(screws(slip), uniform))),
         7.55990, discrete, "mm");
  for (const double k : {5., 500.})
    record("F4", source, "w mid, uniform load, k = " + std::to_string(k),
           mid_deflection(solved(t_section(screws(k), uniform))), Newmark(k).uniform(1), discrete, "mm");
}

TEST(NewmarkComposite, MidForce) {
  for (const double k : {5., 50., 500.})
    record("F5", source, "w mid, force at mid-span, k = " + std::to_string(k),
           mid_deflection(solved(t_section(screws(k), at_mid))), Newmark(k).mid(1000), discrete, "mm");
}

TEST(NewmarkComposite, Limits) {
  record("F7", source, "w mid, screws that hardly hold", mid_deflection(solved(t_section(screws(1e-4), uniform))),
         22.2222, discrete, "mm");
  record("F7", source, "w mid, very stiff screws", mid_deflection(solved(t_section(screws(1e7), uniform))), 5.55556,
         discrete, "mm");
  record("F7", source, "w mid, welded", mid_deflection(solved(t_section(weld, uniform))), 5.55556, welded_at_stations,
         "mm");
}

/// Half a sine wave, 1 N/mm at mid-span, in pieces that each carry its mean.
std::string half_sine() {
  constexpr int pieces = 80;
  const auto place = [](int i) { return "[\"" + std::to_string(L * i / pieces) + " mm\", \"0 mm\", \"0 mm\"]"; };
  const auto angle = [](int i) { return std::numbers::pi * i / pieces; };
  std::string out;
  for (int i = 0; i < pieces; ++i)
    out += "[[load]]\non = \"bed.flange\"\nfrom = " + place(i) + "\nto = " + place(i + 1) +
           "\nper_length = [\"0 N/mm\", \"0 N/mm\", \"" +
           std::to_string((std::cos(angle(i + 1)) - std::cos(angle(i))) * pieces / std::numbers::pi) + " N/mm\"]\n";
  return out;
}

// The gamma method is exact for a half sine (F6): there it must give what Newmark's equation (F3) gives.
TEST(En1995AnnexB, GammaMethodForAHalfSine) {
  const double p = std::numbers::pi / L;
  for (const double k : {5., 50., 500.}) {
    const double gamma = 1 / (1 + p * p * E1 * A1 / k);
    const double a2 = gamma * E1 * A1 * r / (gamma * E1 * A1 + E2 * A2), a1 = r - a2;
    const double effective = EI0 + gamma * E1 * A1 * a1 * a1 + E2 * A2 * a2 * a2;
    const double w = mid_deflection(solved(t_section(screws(k), half_sine())));
    record("F1", "EN 1995-1-1:2004 Annex B, eqs B.1-B.6", "w mid, half sine, k = " + std::to_string(k), w,
           1 / (std::pow(p, 4) * effective), discrete, "mm");
    const double alpha = Newmark(k).alpha;
    record("F6", source, "w mid, half sine, k = " + std::to_string(k), w,
           (p * p / EI0 + alpha * alpha / EIfull) / ((p * p + alpha * alpha) * std::pow(p, 4)), discrete, "mm");
  }
}

// The bracket beside the answer: both limits from one call, whatever the screws' stiffness.
TEST(NewmarkComposite, Bracket) {
  const Registries registries = builtin_registries();
  AnalysisOptions options;
  options.bracket = true;
  const Findings f = analyse(read_case_text(t_section(screws(slip), uniform), registries).machine, registries, options);
  ASSERT_TRUE(f.bracket);
  ASSERT_EQ(f.bracket->no_slip.status, Status::ok) << f.bracket->no_slip.trouble;
  ASSERT_EQ(f.bracket->no_shear.status, Status::ok) << f.bracket->no_shear.trouble;
  record("F7", source, "w mid, bracket, no slip", -f.bracket->no_slip.steps[0].dials[0].movement.z() * 1e3, 5.55556,
         welded_at_stations, "mm");
  record("F7", source, "w mid, bracket, no shear connection", -f.bracket->no_shear.steps[0].dials[0].movement.z() * 1e3,
         22.2222, welded_at_stations, "mm");
  EXPECT_FALSE(solved(t_section(screws(slip), uniform)).bracket) << "only where asked for";
}

// Shear in the screws is the shear flow of the welded section, q x / EIfull (EA)* r, where slip hardly matters: the
// screw next to the end bears most, and the row says so.
TEST(NewmarkComposite, WorstScrew) {
  const Findings f = solved(t_section(screws(1e5), uniform));
  ASSERT_EQ(f.steps[0].screws.size(), 1U);
  const JointResult& row = f.steps[0].screws[0];
  // The end screw passes the flow of its first 100 mm: V from 2000 to 1900 N, mean 1950.
  const double flow = 1950 * E1 * A1 * E2 * A2 / (E1 * A1 + E2 * A2) * r / EIfull;
  record("", "shear flow V (EA)* r / EI of the welded section, Newmark, Siess & Viest (1951)", "shear of the end screw",
         row.value, flow * pitch, 0.02, "N");
  EXPECT_TRUE(row.more.at("screw") == 1 || row.more.at("screw") == 40);
  EXPECT_NEAR(std::abs(row.at.x() * 1e3 - 2000), 1950, 1e-6);
  EXPECT_DOUBLE_EQ(row.more.at("greatest_shear_N"), row.value);
}

// The flange hangs on two screws, which share its load by equilibrium alone; lying on the web it pulls at neither. The
// flange stands on no support of its own.
TEST(NewmarkComposite, TensionOfHangingFlange) {
  const auto greatest_tension = [](const char* joins, const char* load) {
    std::string up = uniform;
    up.replace(up.find("-1 N/mm"), 7, load);
    std::string text = t_section("[[screws]]\njoins = " + std::string(joins) +
                                     "\nsize = \"M10\"\nfirst = \"1000 mm\"\npitch = \"2000 mm\"\ncount = 2\n",
                                 up);
    const std::string support = "[[support]]\nbar = \"bed.flange\"";
    for (std::size_t at = 0; (at = text.find(support)) != std::string::npos;)
      text.replace(at, support.size(), "[[support]]\nbar = \"bed.web\"");
    return solved(text).steps.at(0).screws.at(0).more.at("greatest_tension_N");
  };
  for (const char* joins : {"[\"bed.flange\", \"bed.web\"]", "[\"bed.web\", \"bed.flange\"]"}) {
    record("", "equilibrium: 4000 N on 2 screws", "tension, joins = " + std::string(joins),
           greatest_tension(joins, "1 N/mm"), 2000, 1e-9, "N");
    EXPECT_EQ(greatest_tension(joins, "-1 N/mm"), 0) << joins;
  }
}

} // namespace
} // namespace bedbow
