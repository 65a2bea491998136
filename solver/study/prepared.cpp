#include "solver/study/prepared.h"

#include "mesh/build/mesher.h"
#include "mesh/build/stations.h"
#include "solver/findings/bend_line.h"
#include "solver/model/displacement_guard.h"

#include <algorithm>
#include <map>
#include <stdexcept>

namespace bedbow {

namespace {

/// The machine with one sheet over all places, so that pads and stations are made wherever one is needed.
Machine with_widest_sheet(const Machine& machine, std::span<const SheetPlace> places) {
  if (!machine.sheet || places.empty()) throw std::invalid_argument("the case has no [sheet] to vary");
  if (!machine.body(BodyKind::bed).present() || !machine.body(BodyKind::clamp).present())
    throw std::invalid_argument("a sheet is held between [bed] and [clamp]; the case lacks one of them");
  double left = places[0].left(), right = places[0].right();
  for (const SheetPlace& p : places) {
    left = std::min(left, p.left());
    right = std::max(right, p.right());
  }
  Machine out = machine;
  out.sheet->width = right - left;
  out.sheet->centre = (left + right) / 2;
  return out;
}

} // namespace

PreparedMachine::PreparedMachine(const Machine& machine, const Registries& registries,
                                 std::span<const SheetPlace> places)
    : registries_(registries)
    , machine_(with_widest_sheet(machine, places)) {
  std::vector<HeldSpan> sheets;
  for (const SheetPlace& p : places) sheets.push_back({p.left(), p.right()});
  model_.emplace(make_model(machine_, registries, make_mesh(machine_, registries.shapes, sheets)));
  std::map<int, double> whole; // stiffness of all pads of a spot together
  for (std::size_t i = 0; i < model_->mesh.joints.size(); ++i) {
    const Joint& j = model_->mesh.joints[i];
    if (j.kind != JointKind::pad && j.kind != JointKind::touch && j.kind != JointKind::friction) continue;
    pads_.push_back(i);
    whole[j.index] += j.stiffness[uz];
  }
  for (const std::size_t i : pads_) {
    const Joint& j = model_->mesh.joints[i];
    shares_.push_back(j.stiffness[uz] / whole.at(j.index));
  }
}

void PreparedMachine::lay_sheet(const SheetPlace& place, int material, double thickness) {
  Sheet& sheet = *machine_.sheet;
  sheet.width = place.width;
  sheet.centre = place.centre;
  sheet.material = material;
  sheet.thickness = thickness;
  Mesh& mesh = model_->mesh;
  mesh.bend_stations.clear();
  for (const double x : mesh.stations)
    if (x >= place.left() - same_place && x <= place.right() + same_place) mesh.bend_stations.push_back(x);
  for (const std::size_t pad : pads_) {
    mesh.joints[pad].stiffness[uy] = mesh.joints[pad].stiffness[uz] = 0; // then it has no row
    mesh.joints[pad].tributary = 0;
  }
  for (const PadSpot& spot : pad_spots(machine_, mesh, {place.left(), place.right()}))
    for (std::size_t i = 0; i < pads_.size(); ++i) {
      Joint& j = mesh.joints[pads_[i]];
      if (std::abs(j.b.at.x() - spot.x) > same_place || j.part != spot.finger) continue;
      if (j.kind == JointKind::friction)
        lay_friction(machine_, spot, j);
      else
        lay_spot(machine_, spot, shares_[i], j);
    }
}

Findings PreparedMachine::solve(const SheetPlace& place, int material, double thickness, Look look) {
  lay_sheet(place, material, thickness);
  Findings out;
  out.title = machine_.title;
  const StepsOutcome solved = solve_steps(*model_, sheet_loads_of(machine_, registries_));
  load_cases_ += static_cast<long>(bend_angles(machine_).size()) + 1;
  if (solved.status != Status::ok) {
    out.status = solved.status;
    out.trouble = solved.trouble;
    return out;
  }
  for (const StepSolution& s : solved.steps) {
    StepResult& r = out.steps.emplace_back();
    r.name = s.name;
    r.angle = s.angle;
    fill_bend_line(*model_, s, r);
    if (look == Look::stresses) fill_bars(*model_, s, r);
    fill_joints(*model_, s, r);
    r.displaced = roughly_displaced(*model_, s);
  }
  out.verdict = judge(machine_, out.steps);
  return out;
}

} // namespace bedbow
