/// \file
/// Sources that several files compare with, as the verification page cites them.
#pragma once

namespace bedbow::verification {

inline constexpr const char* roark_beam_table = "Roark, Formulas for Stress and Strain, Table 8.1";
inline constexpr const char* cantilever_tables =
    "F a^2 (3 l - a)/(6 E I), tquigley.com/T302.htm; shear F l/(kappa G A)";
inline constexpr const char* stability_of_timoshenko = "Timoshenko & Gere, Theory of Elastic Stability, 2nd ed. 1961, ";

} // namespace bedbow::verification
