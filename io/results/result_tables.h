/// \file
/// The tables of a solved case, for terminal and report alike.
#pragma once

#include "io/text/table.h"
#include "io/units/output_units.h"
#include "solver/findings/part_peaks.h"

#include <string>
#include <vector>

namespace bedbow {

/// Bow of each body and bend angle, one row per step; the worst step is marked.
TextTable bow_table(const Findings& findings, const OutputUnits& units);

/// Bow and straightness of each body over its whole length, for a case without a sheet; empty where there is no body.
TextTable whole_bow_table(const Findings& findings, const OutputUnits& units);

/// For each bar and joint its greatest load and the step of it, and its highest utilisation: governing
/// check, place and step.
TextTable load_table(const Findings& findings, const OutputUnits& units);

/// Where the clamp keeps no reserve, one sentence a step: "bend 0 deg: at 12 of 49 stations only the sheet's own lever
/// presses on the nose, by 19.4 N/mm ...", and how far the nose is open there.
std::vector<std::string> hold_words(const Findings& findings, const OutputUnits& units);

/// Title and greatest force along each hinge pin: "hinge left: 0.120 kN (bend 90 deg)".
inline constexpr const char* thrust_title = "Thrust along the hinge pins, not checked";
std::vector<std::string> thrust_words(const Findings& findings, const OutputUnits& units);
/// Bars whose local peak of stress exceeds the stress that is judged: "bar bed.top: 33.0 MPa at x = 40 mm, clamped
/// (judged: 22.2 MPa)".
std::vector<std::string> local_peak_words(const Findings& findings, const OutputUnits& units);
/// Heading of that list.
std::string local_peak_title();

/// Expected wear and damage, each once: "hinge left: at 6.8 MPa the hole will wear oval ...".
std::vector<std::string> load_remarks(const Findings& findings);

/// Sources of the allowable values, each once: "pin pressure: common practice, no source".
std::vector<std::string> allowable_sources(const Findings& findings);

/// Displacement of each dial in each step.
TextTable dial_table(const Findings& findings, const OutputUnits& units);

/// "Mass of bars, members and panels: 23.8 kg", or that it is unknown, and why.
std::string mass_words(const Findings& findings);

/// The governing check of a part: "pin pressure 6.7 of 5.0 MPa"; empty where none is known.
std::string governing_words(const PartPeaks& part, const OutputUnits& units);

/// Utilisation in whole percent; "-" where it is unknown (0).
std::string percent(double utilisation);

} // namespace bedbow
