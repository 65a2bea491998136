/// \file
/// Settings of the machine for each sheet thickness. Each value comes from the geometry of the machine, a rule of DIN
/// 6935, or the solution. Theory: docs/guide/setup.md.
#pragma once

#include "solver/analysis.h"
#include "solver/strength/allowable.h"

#include <string>
#include <vector>

namespace bedbow {

/// Angle by which one nut is turned until its post has its preload.
struct NutSetting {
  std::string post;
  double preload = 0; ///< [N]
  double stretch = 0; ///< of the stud under it [m]
  double down = 0;    ///< lowering of the clamp there from lying loose on nose and cams [m]
  double turn = 0;    ///< of the nut from finger-tight on the loose clamp [rad]
};

/// Settings for one sheet thickness. NaN where the case lacks data.
struct Setting {
  double thickness = 0;
  double inside_radius = 0;      ///< the case's, or the least by table where that is more [m]
  Allowable least_radius;        ///< [m]
  double setback = 0;            ///< of a sharp nose edge: least_setback, and the case's excess over its own [m]
  double rounded_setback = 0;    ///< of a nose edge rounded to the inside radius, likewise [m]
  double nut_turns = 0;          ///< from the setting for the case's own sheet, up positive
  std::vector<NutSetting> nuts;  ///< of the posts with a preload and a known pitch
  double cam_angle = 0;          ///< clamped, with the nuts left as they are [rad]
  double k = 0;                  ///< DIN 6935
  double correction = 0;         ///< to add to the sum of the outside legs [m]
  double apron_angle = 0;        ///< to swing to [rad]
  double springback = 0;         ///< part of it, of bend, flange and grip together [rad]
  double lag = 0;                ///< mean deflection of the machine, part of it [rad]
  double hand_force = 0;         ///< greatest of any handle [N]
  double least_flange = 0;       ///< [m]
  bool flange_by_limits = false; ///< governed by the limits, not by the size of the bend
  bool within_limits = false;
  std::string trouble; ///< why it could not be solved; empty when it was
};

/// Each is solved with the clamp raised with the sheet and the nose edge at the set-back; the clamp's bars stay where
/// the case has them along y.
/// \param thicknesses [m] > 0. \param reach from bend line to hand for handles without one [m]; NaN unknown.
std::vector<Setting> find_settings(const Machine& machine, const Registries& registries,
                                   const std::vector<double>& thicknesses, double reach);

/// Cam angle that lifts the tail as far above touching as in the case, when the sheet is thicker by `more` [m] and the
/// nuts stay: the nose touches earlier by more / opening of the lever. NaN where the stroke does not reach.
double cam_angle_for(const Machine& machine, double more);

} // namespace bedbow
