/// \file
/// Hinge pins and their holes: pressure on the projected area, shear and bending of the pin, and wear of the
/// hole. Equations and sources: docs/theory/bearing.md.
#pragma once

#include "solver/strength/allowable.h"

#include <vector>

namespace bedbow {

/// A pin under a transverse force. Lengths in m.
struct Pin {
  double diameter = 0;
  double bearing_length = 0; ///< of the hole that carries the whole force
  int shear_planes = 1;      ///< 1: overhung; 2: held on both sides by cheeks of half the bearing length
  double gap = 0;            ///< clear distance along the pin between the joined parts
  bool swings = true;        ///< turns under load, as in a hinge
  Material pin, hole;
  Material seat; ///< of the part in which an overhung pin is fixed, as deep as the bearing is long; no E: unknown
  std::optional<double> allowed_pressure; ///< [Pa] overrides the pressure's allowable
  std::optional<double> allowed_stress;   ///< [Pa] overrides the pin's yield
  std::optional<double> allowed_seat;     ///< [Pa] overrides the seat's allowable
};

/// Condition of the hole after some use.
enum class HoleFate {
  keeps,      ///< below every limit
  wears_oval, ///< withstands the force, but wears while the pin swings under it
  yields_oval ///< yields out of round at once
};

struct PinResult {
  double pressure = 0; ///< force over projected area [Pa]
  double shear = 0;    ///< greatest shear stress, 4/3 of the mean [Pa]
  double bending = 0;  ///< [Pa]
  double seat = 0;     ///< pressure at the mouth of an overhung pin's seat [Pa]; 0 held on both sides
  HoleFate fate = HoleFate::keeps;
  std::vector<Check> checks; ///< "pin pressure", "pin shear", "pin bending"; overhung in a known seat "pin's seat"
};

/// Pressure [Pa] at the mouth of a seat of length l [m] that holds a pin of diameter d [m] against a force across it
/// [N], e [m] outside the mouth: (4 + 6 e/l) F/(d l), pressure varying linearly along the seat. Source: statics,
/// docs/theory/bearing.md.
double seat_mouth_pressure(double force, double diameter, double length, double outside);

/// \param force across the pin [N], >= 0.
/// pressure = F / (d l); shear = (4/3) F / (n A) against yield/sqrt3; bending from M = F (gap + l/2) when overhung,
/// M = (F/8)(2 l + 4 gap) when held on both sides (EN 1993-1-8 Fig. 3.11), against yield; overhung, the seat's mouth
/// against resting_pressure, since the pin does not turn there.
/// Throws std::invalid_argument naming the size at fault.
PinResult check_pin(const Pin& pin, double force);

/// One sentence for the builder: "at 21 MPa the hole will wear oval: a steel pin in steel withstands 5 MPa while it
/// swings".
std::string describe(const Pin& pin, const PinResult& result);

} // namespace bedbow
