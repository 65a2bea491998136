/// \file
/// The tables of a solved case, for terminal and report alike.
#pragma once

#include "io/output_units.h"
#include "io/table.h"
#include "solver/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// A bar or joint at the step where it bears most.
struct WorstOf {
  std::string what;        ///< "bar clamp.plate", "post left end"
  std::string load, place; ///< with units
  std::string step;
  double utilisation = 0, value = -1; ///< SI
  std::string by;                     ///< the check that governs: "pin pressure 6.7 of 5.0 MPa"
};

/// One entry per bar, post, cam, hinge, row of screws, support and tie, in this order in each step.
std::vector<WorstOf> worst_loads(const Findings& findings, const OutputUnits& units);

/// Bow of each body and bend angle, one row per step; the worst step is marked.
TextTable bow_table(const Findings& findings, const OutputUnits& units);

/// Bow and straightness of each body over its whole length, for a case without a sheet; empty where there is no body.
TextTable whole_bow_table(const Findings& findings, const OutputUnits& units);

/// worst_loads as a table.
TextTable load_table(const Findings& findings, const OutputUnits& units);

/// Where the clamp keeps no reserve, one sentence a step: "bend 0 deg: at 12 of 49 stations only the sheet's own lever
/// presses on the nose, by 19.4 N/mm ...", and how far the nose stands open there.
std::vector<std::string> hold_words(const Findings& findings, const OutputUnits& units);

/// What becomes of holes and the like, each once: "hinge left: at 6.8 MPa the hole will wear oval ...".
std::vector<std::string> load_remarks(const Findings& findings);

/// Who says what may be borne, each once: "pin pressure: common practice, no source".
std::vector<std::string> allowable_sources(const Findings& findings);

/// How far each dial moves in each step.
TextTable dial_table(const Findings& findings, const OutputUnits& units);

/// "post left end" of kind "post" and name "left end"; a name that says its kind already is left alone.
std::string with_kind(const std::string& kind, const std::string& name);

/// Utilisation in whole percent; "-" where it is unknown (0).
std::string percent(double utilisation);

} // namespace bedbow
