#include "solver/arm_seats.h"

#include "mesh/build/mesher.h"
#include "mesh/build/seats.h"
#include "solver/variant_steps.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

namespace bedbow {

namespace {

/// A force that changes by more than this is worth a warning: the contract's.
constexpr double worth_a_warning = 0.1;

/// Calls f(joint) for the joint of the machine's list that a side belongs to.
template <class M, class F> void with_joint(M& machine, const mesher::ArmSide& side, F f) {
  machine.each_joint_list([&](JointKind kind, auto& list) {
    if (kind == side.kind) f(list[side.index]);
  });
}

Machine with_small_seats(const Machine& machine, const std::vector<mesher::ArmSide>& sides) {
  Machine out = machine;
  for (const mesher::ArmSide& s : sides) with_joint(out, s, [](JointBase& j) { j.seat.setConstant(small_seat); });
  return out;
}

/// Greatest value of a joint in any step [N]; NaN where it has none.
double greatest_force(const std::vector<StepResult>& steps, const ArmSeat& joint) {
  double out = nan;
  for (const StepResult& s : steps)
    for (const JointResult& r : joints_of(s, joint.kind))
      if (r.name == joint.name && std::isfinite(r.value)) out = std::fmax(out, std::abs(r.value));
  return out;
}

std::array<double, 3> greatest_bows(const std::vector<StepResult>& steps) {
  std::array<double, 3> out{nan, nan, nan};
  for (const StepResult& s : steps)
    for (std::size_t i = 0; i < out.size(); ++i) out[i] = std::fmax(out[i], s.bow.bow[i]);
  return out;
}

std::vector<ArmSeat> joints_of_sides(const Machine& machine, const std::vector<mesher::ArmSide>& sides) {
  std::vector<ArmSeat> out;
  for (const mesher::ArmSide& s : sides)
    with_joint(machine, s, [&](const JointBase& j) {
      ArmSeat seat;
      seat.kind = s.kind;
      seat.name = j.name.empty() ? numbered(s.kind, s.index) : j.name;
      seat.on = machine.plain_name(j.joins[s.side]);
      seat.arm = s.seat.arm;
      seat.along = s.seat.along;
      seat.across = s.seat.across;
      out.push_back(std::move(seat));
    });
  return out;
}

} // namespace

std::optional<ArmSeats> arm_seats_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                                     const std::vector<StepResult>& steps, const std::optional<SheetLoads>& sheet) {
  const std::vector<mesher::ArmSide> sides = mesher::joints_on_arms(machine, mesh);
  if (sides.empty()) return std::nullopt;
  ArmSeats out;
  out.joints = joints_of_sides(machine, sides);
  out.bow = greatest_bows(steps);
  const Machine small = with_small_seats(machine, sides);
  VariantSteps again = solve_variant(small, registries, make_mesh(small, registries.shapes), sheet);
  out.status = again.status;
  out.trouble = std::move(again.trouble);
  out.bow_small = greatest_bows(again.steps);
  for (ArmSeat& j : out.joints) {
    j.force = greatest_force(steps, j);
    j.force_small = greatest_force(again.steps, j);
  }
  return out;
}

void warn_of_seats(const ArmSeats& seats, std::vector<std::string>& warnings) {
  for (const ArmSeat& j : seats.joints) {
    if (!(std::abs(j.force_small - j.force) > worth_a_warning * std::abs(j.force))) continue;
    char text[160];
    std::snprintf(text, sizeof text, "%.4g kN with a seat of %.3g x %.3g mm, %.4g kN with one of %.3g mm",
                  j.force * 1e-3, j.along * 1e3, j.across * 1e3, j.force_small * 1e-3, small_seat * 1e3);
    warnings.push_back(std::string(info(j.kind).key) + " " + j.name + " reaches " + j.on +
                       " by a rigid arm, and its force depends on the size of its seat there: " + text +
                       "; give `seat`");
  }
}

} // namespace bedbow
