#include "mesh/build/places.h"
#include "mesh/machine/frame.h"
#include "solver/findings/results.h"
#include "solver/model/recovery.h"

namespace bedbow {

void fill_dials(const Model& m, const StepSolution& step, StepResult& out) {
  for (const Dial& d : m.machine.dials) {
    Vector6d v;
    if (d.on.kind == Ref::Kind::bar) {
      v = section_motion(m, step, d.on, d.at.x(), d.at.y(), d.at.z());
      if (d.on.body == BodyKind::apron) v = turned(apron_turn(step.angle), v);
    } else {
      v = place_motion(step, place_on_structure(m.mesh, d.on, d.at));
    }
    out.dials.push_back({d.name, v.head<3>()});
  }
}

} // namespace bedbow
