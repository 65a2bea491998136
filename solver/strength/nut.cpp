#include "solver/strength/nut.h"

#include <algorithm>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

// Shear strength over tensile strength of steel threads; common practice, no source.
constexpr double shear_ratio = 0.6;

// Strip load per engaged length [N/m].
double strip_per_length(const Thread& thread, double screw_tensile, double nut_tensile, double reserve) {
  const ThreadShear area = thread_shear(thread);
  return shear_ratio * std::min(area.bolt * screw_tensile, area.nut * nut_tensile) / reserve;
}

} // namespace

Seat nut_seat(const Thread& thread, bool with_washer) {
  const Hardware h = hardware(thread);
  return with_washer ? nut_seat(thread, h.washer_diameter, h.washer_thickness) : Seat{h.across_flats, h.hole};
}

Seat nut_seat(const Thread& thread, double washer_diameter, double washer_thickness) {
  const Hardware h = hardware(thread);
  return {std::min(washer_diameter, h.across_flats + 1.6 * washer_thickness), h.hole};
}

double seat_pressure_of(const Seat& seat, double force) {
  if (!(seat.outer > seat.inner) || !(seat.inner >= 0))
    throw std::invalid_argument("nut seat: the bearing face must be wider than its hole");
  return force / (std::numbers::pi / 4 * (seat.outer * seat.outer - seat.inner * seat.inner));
}

Check check_seat(const Seat& seat, double force, const Material& under, std::optional<double> own) {
  return {"nut seat", seat_pressure_of(seat, force), overridden(own, seat_pressure(under)), Quantity::stress,
          Failure::wears};
}

Check check_thread_shear(const ThreadEngagement& e, double force, double reserve, std::optional<double> own) {
  const double strip = strip_per_length(e.thread, e.screw_tensile, e.nut_tensile, reserve) * e.length;
  return {
      "thread shear", force,
      overridden(own,
                 {strip,
                  "0.6 tensile strength on the basic profile, reduced by a reserve, common practice, no source; areas: "
                  "FED-STD-H28"}),
      Quantity::force};
}

double engagement_needed(const Thread& thread, double screw_tensile, double nut_tensile, double reserve) {
  return stress_area(thread) * screw_tensile / strip_per_length(thread, screw_tensile, nut_tensile, reserve);
}

} // namespace bedbow
