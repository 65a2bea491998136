/// \file
/// Two bars on a row of screws: the T-section of references F7 as a case, and what Newmark's equation needs of it.
#pragma once

#include "tests/verification/support/whole_program.h"

#include <cmath>
#include <string>

namespace bedbow::verification::composite {

inline constexpr const char* source = "Newmark, Siess & Viest, Proc. SESA 9 (1951); Girhammar, IJMS 51 (2009) 515-530";

// Data as in Girhammar's papers (from memory): 300 x 50 on a web 50 x 150. N and mm, as the sources print them.
inline constexpr double E1 = 12000, A1 = 300 * 50, I1 = 300. * 50 * 50 * 50 / 12;
inline constexpr double E2 = 8000, A2 = 50 * 150, I2 = 50. * 150 * 150 * 150 / 12;
inline constexpr double r = 100, L = 4000, pitch = L / 40, slip = 50; ///< slip modulus per length [N/mm^2]
inline constexpr double EI0 = E1 * I1 + E2 * I2;
inline constexpr double EIfull = EI0 + E1 * A1 * E2 * A2 / (E1 * A1 + E2 * A2) * r * r;
/// Relative; screws at L/40 against a smeared connection.
inline constexpr double discrete = 0.005;

/// alpha of Newmark's equation [1/mm]. \param k slip modulus per length [N/mm^2].
inline double alpha(double k) {
  return std::sqrt(k * (1 / (E1 * A1) + 1 / (E2 * A2) + r * r / EI0));
}

/// Bending stiffness by the gamma method of EN 1995-1-1 Annex B. \param length effective, of B.1.2 [mm].
inline double gamma_stiffness(double k, double length) {
  const double p = M_PI / length;
  const double gamma = 1 / (1 + p * p * E1 * A1 / k);
  const double a2 = gamma * E1 * A1 * r / (gamma * E1 * A1 + E2 * A2), a1 = r - a2;
  return EI0 + gamma * E1 * A1 * a1 * a1 + E2 * A2 * a2 * a2;
}

/// Both bars held at a station. \param x as in a case ("0 mm"). \param what as in a case: `"y", "z"`.
std::string held(const std::string& x, const std::string& what);
/// Forks under both ends, and kept from sliding away.
std::string on_two_supports();

/// The case: what joins the bars, what loads them, what holds them. Dials "mid" and "end" on the web. Shear does not
/// bend Newmark's bars, so G is out of all proportion.
std::string t_section(const std::string& joined, const std::string& load, const std::string& held = on_two_supports());
/// Screws at L/40 of that slip modulus per length.
std::string screws(double per_length);
/// Upwards all along the flange [N/mm].
std::string uniform_load(double per_length = -1);
/// On the flange [N].
std::string force_down(const std::string& x, double newton);
/// `peak` sin(angle) [N/mm] upwards, the angle growing evenly from one end to the other; in pieces that each carry
/// their mean.
std::string wave_load(double peak, double from, double to);

/// How far a dial sank [mm], in the first step.
double sunk(const Findings& f, const std::string& name);

} // namespace bedbow::verification::composite
