#include "solver/strength/pin.h"

#include <cmath>
#include <cstdio>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

using std::numbers::pi, std::numbers::sqrt3;

void require_positive(double value, const char* name) {
  if (!(value > 0) || !std::isfinite(value))
    throw std::invalid_argument(std::string("hinge pin: ") + name + " must be greater than 0");
}

std::string in_MPa(double pressure) {
  char text[32];
  std::snprintf(text, sizeof text, "%.3g MPa", pressure / 1e6);
  return text;
}

/// From the mouth of an overhung pin's seat to the force in the middle of its bearing.
double overhang(const Pin& pin) {
  return pin.gap + pin.bearing_length / 2;
}

double bending_moment(const Pin& pin, double force) {
  if (pin.shear_planes == 1) return force * overhang(pin);
  return force / 8 * (2 * pin.bearing_length + 4 * pin.gap);
}

} // namespace

double seat_mouth_pressure(double force, double diameter, double length, double outside) {
  return (4 + 6 * outside / length) * force / (diameter * length);
}

PinResult check_pin(const Pin& pin, double force) {
  require_positive(pin.diameter, "diameter");
  require_positive(pin.bearing_length, "bearing_length");
  if (pin.shear_planes != 1 && pin.shear_planes != 2)
    throw std::invalid_argument("hinge pin: shear_planes must be 1 (overhung) or 2 (held on both sides)");
  const double area = pi / 4 * pin.diameter * pin.diameter, modulus = pi / 32 * std::pow(pin.diameter, 3);
  PinResult out;
  out.pressure = force / (pin.diameter * pin.bearing_length);
  out.shear = 4.0 / 3 * force / (pin.shear_planes * area);
  out.bending = bending_moment(pin, force) / modulus;

  const Allowable resting = resting_pressure(pin.pin, pin.hole);
  const Allowable swinging = swinging_pressure(surface_of(pin.pin), surface_of(pin.hole));
  const Allowable pressure = overridden(pin.allowed_pressure, pin.swings ? swinging : resting);
  const Allowable stress = overridden(pin.allowed_stress, {pin.pin.yield, "yield of the pin"});
  out.checks.push_back({"pin pressure", out.pressure, pressure, Quantity::stress, Failure::wears});
  out.checks.push_back({"pin shear", out.shear, {stress.value / sqrt3, stress.source + " / sqrt3 (von Mises)"}});
  out.checks.push_back({"pin bending", out.bending, stress, Quantity::stress, Failure::yields});
  if (pin.shear_planes == 1) {
    out.seat = seat_mouth_pressure(force, pin.diameter, pin.bearing_length, overhang(pin));
    if (pin.seat.E > 0 || pin.allowed_seat)
      out.checks.push_back(
          {"pin's seat", out.seat,
           overridden(pin.allowed_seat, pin.seat.yield > 0 ? resting_pressure(pin.pin, pin.seat) : Allowable{}),
           Quantity::stress, Failure::yields});
  }

  if (resting.value > 0 && out.pressure > resting.value)
    out.fate = HoleFate::yields_oval;
  else if (pin.swings && out.pressure > pressure.value)
    out.fate = HoleFate::wears_oval;
  return out;
}

std::string describe(const Pin& pin, const PinResult& result) {
  const std::string at = "at " + in_MPa(result.pressure) + " the hole ";
  const std::string pair = "a " + to_string(surface_of(pin.pin)) + " pin in " + to_string(surface_of(pin.hole));
  switch (result.fate) {
  case HoleFate::keeps:
    return at + "keeps its shape";
  case HoleFate::wears_oval:
    return at + "will wear oval: " + pair + " withstands " + in_MPa(result.checks.front().allowed.value) +
           " while it swings";
  case HoleFate::yields_oval:
    return at + "is squeezed oval at once: " + pair + " withstands " +
           in_MPa(resting_pressure(pin.pin, pin.hole).value) + " without yielding";
  }
  return at;
}

} // namespace bedbow
