// Beams on an elastic foundation: the clamp is the beam, the sheet's compression-only pads are the foundation, the bed
// is far too stiff to take part. Contact, lift-off and the condensed system all stand between the case and the answer.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

namespace bedbow::verification {
namespace {

// k = E_sheet * land / thickness = 50 N/mm per mm; EI = 210000 * 2e6 N mm^2.
constexpr double k = 50, E = 210000, I = 2e6, P = 1000;
const double lambda = std::pow(k / (4 * E * I), 0.25);

/// A clamp of length L [mm] on its pads; loads on "clamp.beam".
std::string on_pads(double L, double element, const std::string& extra) {
  const std::string all = mm(L), half = mm(L / 2);
  return R"([material.steel]
E = "210 GPa"
nu = 0.3
[material.soft]
E = "5 MPa"
nu = 0.3
yield = "1 MPa"
[sheet]
material = "soft"
thickness = "1 mm"
width = )" +
         all + "\ncentre = " + half +
         R"(
flange = "20 mm"
inside_radius = "1 mm"
angle = "90 deg"
grip = "10 mm"
[bed]
length = )" +
         all +
         R"(
material = "steel"
[[bed.bar]]
name = "ground"
shape = "section"
A = "1e6 m^2"
Iyy = "1e6 m^4"
Izz = "1e6 m^4"
J = "1e6 m^4"
at = ["7 mm", "0 mm"]
[clamp]
length = )" +
         all +
         R"(
material = "steel"
nose = { bar = "beam", land = "10 mm" }
[[clamp.bar]]
name = "beam"
shape = "section"
A = "4000 mm^2"
Iyy = "2e6 mm^4"
Izz = "2e6 mm^4"
J = "3e6 mm^4"
Ay = "1e3 m^2"
Az = "1e3 m^2"
at = ["7 mm", "1 mm"]
[[support]]
bar = "bed.ground"
x = "0 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[tie]]
joins = ["clamp.beam", "ground"]
at = [)" +
         half +
         R"(, "7 mm", "1 mm"]
holds = ["x", "y", "rx", "rz"]
[solve]
angles = ["0 deg"]
element_size = )" +
         mm(element) + "\n" + extra;
}

std::string press(double x, double newton) {
  return "[[load]]\non = \"clamp.beam\"\nat = " + point({x, 7, 1}) + "\nforce = [\"0 N\", \"0 N\", " +
         quantity(-newton, "N") + "]\n";
}

std::string press_all(double L, double newton_per_mm) {
  return "[[load]]\non = \"clamp.beam\"\nfrom = " + point({0, 7, 1}) + "\nto = " + point({L, 7, 1}) +
         "\nper_length = [\"0 N/mm\", \"0 N/mm\", " + quantity(-newton_per_mm, "N/mm") + "]\n";
}

std::string watch(const std::string& name, double x) {
  return "[[dial]]\nname = \"" + name + "\"\non = \"clamp.beam\"\nat = " + point({x, 7, 1}) + "\n";
}

/// Moment about y where P stands [N mm].
double moment_under(const Findings& f, double x) {
  return std::abs(forces_at(field(f, "clamp.beam"), x * 1e-3).My) * 1e3;
}

/// What a quantity tends to as the pads, which are points h apart, come closer: from h and h/2, the error being of
/// second order in h (Euler and Maclaurin's h^2/12). The order itself is checked with h/4.
double with_closer_pads(double h, const std::function<double(double h)>& of) {
  const double coarse = of(h), middle = of(h / 2), fine = of(h / 4);
  EXPECT_NEAR((coarse - middle) / (middle - fine), 4, 0.5);
  return fine + (fine - middle) / 3;
}

TEST(Hetenyi1946, UniformLoadSinksEvenly) {
  const double L = 1000;
  for (const char* where : {"mid", "end"})
    record("A47", "trivial: w = q/k", std::string("w at the ") + where,
           with_closer_pads(20,
                            [&](double h) {
                              const Findings f =
                                  solved(on_pads(L, h, press_all(L, 2) + watch("mid", L / 2) + watch("end", 0)));
                              return -dial(f, where).z();
                            }),
           2 / k, 1e-8, "mm");
}

/// A 12 m beam, which is 28 characteristic lengths, under one force. A uniform load keeps all pads closed, so that the
/// force's share is the difference of two solutions.
struct Infinite {
  double w, w_zero, moment;
  explicit Infinite(double h) {
    const double L = 12000, x0 = 3 * std::numbers::pi / (4 * lambda);
    const std::string both = press_all(L, 1) + watch("mid", L / 2) + watch("zero", L / 2 + x0);
    const Findings without = solved(on_pads(L, h, both + press(L / 2, 0)));
    const Findings with = solved(on_pads(L, h, both + press(L / 2, P)));
    for (const double reserve : with.steps[0].bend_line.clamp_reserve) EXPECT_GT(reserve, 0);
    w = dial(without, "mid").z() - dial(with, "mid").z();
    w_zero = dial(without, "zero").z() - dial(with, "zero").z();
    moment = moment_under(with, L / 2) - moment_under(without, L / 2);
  }
};

TEST(Hetenyi1946, InfiniteBeamUnderOneForce) {
  // files.library.nung.edu.ua/chytalnya/4560, p. 101
  const std::string from = "y'''' + 4 lambda^4 y = 0 of an infinite beam (derived; nung.edu.ua, 4560, p. 101)";
  const Infinite coarse(40), fine(20);
  // Deflection is of fourth order in the distance of the pads, (lambda h)^4 = 5e-6 with a small factor.
  record("A40", from, "w under the force, pads 20 mm apart", fine.w, 0.02335690, 5e-7, "mm");
  // Pads are points: of second order in their distance.
  record("A40", from, "M under the force, pads 40 and 20 mm apart extrapolated",
         fine.moment + (fine.moment - coarse.moment) / 3, 107034.8, 5e-7, "N mm");
  record("A40", from, "w at 3 pi/(4 lambda) over w under the force", fine.w_zero / fine.w, 0, 1e-6);
}

void finite_beam(const std::string& id, double lambda_L, double centre, double end, double moment) {
  const double L = lambda_L / lambda;
  const auto pressed = [&](double h) {
    return solved(on_pads(L, h, press(L / 2, P) + watch("mid", L / 2) + watch("end", 0)));
  };
  const std::string from = "y'''' + 4 lambda^4 y = 0 with free ends, its four constants solved for (derived)",
                    size = ", lambda L = " + std::to_string(int(lambda_L));
  const auto deflection = [&](const char* where) {
    return with_closer_pads(20, [&](double h) { return -dial(pressed(h), where).z() * k * L / P; });
  };
  // Seven and six printed digits.
  record(id, from, "w_c k L/P" + size, deflection("mid"), centre, 1e-6);
  record(id, from, "w_end k L/P" + size, deflection("end"), end, 1e-6);
  record(id, from, "M_c/(P L)" + size,
         with_closer_pads(20, [&](double h) { return moment_under(pressed(h), L / 2) / (P * L); }), moment, 5e-6);
}

TEST(Hetenyi1946, FiniteBeamUnderAMiddleForce) {
  finite_beam("A41", 1, 1.012406, 0.981404, 0.124311);
  finite_beam("A42", 2, 1.178541, 0.735186, 0.115140);
}

// Beyond the closed forms: under one force alone the far part of a long beam lifts off, for pads do not pull.
TEST(Hetenyi1946, LongBeamLiftsOff) {
  const double L = 4000;
  const Findings f = solved(on_pads(L, 20, press(L / 2, P) + watch("end", 0)));
  EXPECT_GT(dial(f, "end").z(), 0);
  double lowest = 0, sum = 0;
  for (const ForceArrow& a : f.steps[0].fields.forces)
    if (a.kind == "pad") {
      lowest = std::min(lowest, -a.force.z()); // on the bed: down where it presses
      sum += -a.force.z();
    }
  record("", "no pad pulls", "least pad force", lowest, 0, 1e-9 * P, "N");
  record("", "equilibrium", "sum of the pads over P", sum / P, 1, 1e-9);
}

} // namespace
} // namespace bedbow::verification
