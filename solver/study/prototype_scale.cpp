// Every length of a machine times one factor.
#include "mesh/machine/seat.h"
#include "mesh/piece/fastener.h"
#include "mesh/piece/si.h"
#include "solver/model/model.h"
#include "solver/study/prototype.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>
#include <string>

namespace bedbow {

namespace {

void scale(Shape& shape, double s) {
  shape.width *= s;
  shape.height *= s;
  shape.diameter *= s;
  shape.wall *= s;
  if (!shape.given.empty())
    throw std::invalid_argument(
        "a bar of given section properties can't be scaled: describe it as a rectangle, tube or round");
}

void scale(std::vector<double>& list, double s) {
  for (double& v : list) v *= s;
}

void scale(Body& body, double s) {
  body.start *= s;
  body.length *= s;
  scale(body.crown.x, s);
  scale(body.crown.height, s);
  for (Bar& bar : body.bars) {
    scale(bar.shape, s);
    bar.at *= s;
    bar.start *= s;
    bar.length *= s;
  }
}

/// A thread of any size, as a metric one of the pitch that gives its stressed circle: no standard has it.
std::string scaled_thread(const Thread& thread, double s) {
  const double per_pitch = (thread.d - stress_diameter(thread)) / thread.pitch;
  const double metric = stress_diameter({"", 0, -1, false}); // of a pitch of 1
  char text[64];
  std::snprintf(text, sizeof text, "M%.17gx%.17g", s * thread.d / si::mm,
                s * thread.pitch * per_pitch / metric / si::mm);
  return text;
}

void scale_clamping(Machine& m, double s) {
  m.nose.setback *= s;
  m.nose.radius *= s;
  m.nose.land *= s;
  if (m.fingers) {
    scale(m.fingers->widths, s);
    scale(m.fingers->starts, s);
    m.fingers->reach *= s;
    m.fingers->thickness *= s;
    if (m.fingers->root_stiffness) *m.fingers->root_stiffness *= s * s * s;
  }
  if (m.sheet)
    for (double* v : {&m.sheet->thickness, &m.sheet->width, &m.sheet->centre, &m.sheet->flange, &m.sheet->inside_radius,
                      &m.sheet->grip})
      *v *= s;
  for (Post& p : m.posts) {
    if (!std::isfinite(p.washer_diameter)) p.washer_diameter = contact_of(p).along; // of the thread as built
    if (const auto thread = find_thread(p.thread)) p.thread = scaled_thread(*thread, s);
    p.diameter *= s;
    p.free_length *= s;
    for (double* v : {&p.washer_diameter, &p.washer_thickness, &p.engagement, &p.tapped}) *v *= s;
  }
  for (Cam& c : m.cams) {
    c.lift *= s;
    c.radius *= s;
    c.width *= s;
    c.shaft *= s;
    c.lever *= s;
    if (c.throw_) *c.throw_ *= s;
  }
}

void scale_joints(Machine& m, double s) {
  m.each_joint_list([&](JointKind, auto& list) {
    for (JointBase& j : list) {
      j.at *= s;
      j.seat *= s;
    }
  });
  for (Hinge& h : m.hinges) {
    h.pin *= s;
    h.bearing_length *= s;
    h.gap *= s;
    if (h.end_float) *h.end_float *= s;
  }
  for (Handle& h : m.handles) h.reach *= s;
  for (Screws& row : m.screws) {
    row.thread.clear();
    row.diameter *= s;
    scale(row.x, s);
  }
  for (Weld& w : m.welds) {
    w.from *= s;
    w.to *= s;
  }
}

void scale_structure(Machine& m, double s) {
  for (Member& b : m.members) {
    b.from *= s;
    b.to *= s;
    scale(b.shape, s);
  }
  for (Panel& p : m.panels) {
    p.corner *= s;
    p.edge_a *= s;
    p.edge_b *= s;
    p.thickness *= s;
  }
  for (Eigen::Vector3d& p : m.own.points) p *= s;
  for (OwnSection& section : m.own.sections) scale(section.shape, s);
  for (OwnQuad& q : m.own.quads) q.thickness *= s;
  for (Hold& h : m.holds) {
    h.from *= s;
    h.to *= s;
  }
  for (Load& l : m.loads) {
    l.from *= s;
    l.to *= s;
  }
  for (Dial& d : m.dials) d.at *= s;
  m.solve.element_size *= s;
}

/// Given stiffnesses and loads of the prototype.
void scale_loads(Machine& m, double s, double e) {
  const double force = s * s * e;
  if (m.fingers && m.fingers->root_stiffness) *m.fingers->root_stiffness *= e; // already includes sizes
  for (Post& p : m.posts)
    if (p.preload) *p.preload *= force;
  for (Cam& c : m.cams)
    if (c.stiffness) *c.stiffness *= s * e;
  for (Screws& row : m.screws)
    if (row.shear_stiffness) *row.shear_stiffness *= s * e;
  const auto soften = [&](auto& j) {
    if (j.stiffness) *j.stiffness *= s * e;
    if (j.rotational_stiffness) *j.rotational_stiffness *= s * s * s * e;
  };
  for (Tie& t : m.ties) soften(t);
  for (Support& u : m.supports) soften(u);
  for (Load& l : m.loads) {
    l.force *= l.kind == Load::Kind::line ? s * e : force;
    l.moment *= force * s;
    l.pressure *= e;
  }
}

} // namespace

Machine scaled(const Machine& machine, double s) {
  if (!(s > 0) || !std::isfinite(s)) throw std::invalid_argument("the scale must be greater than 0: 0.5 is half size");
  Machine m = machine;
  for (Body& body : m.bodies) scale(body, s);
  scale_clamping(m, s);
  scale_joints(m, s);
  scale_structure(m, s);
  return m;
}

Machine prototype_of(const Machine& machine, const Registries& registries, const Material& material, double s,
                     Material& base) {
  Machine m = scaled(machine, s);
  const Body& body_of_base =
      machine.body(BodyKind::clamp).present() ? machine.body(BodyKind::clamp) : machine.body(BodyKind::bed);
  const int base_material =
      body_of_base.present()
          ? body_of_base.bars.at(static_cast<std::size_t>(std::max(body_of_base.edge_bar, 0))).material
      : !machine.members.empty()   ? machine.members.front().material
      : !machine.panels.empty()    ? machine.panels.front().material
      : !machine.own.lines.empty() ? machine.own.lines.front().material
                                   : machine.own.quads.at(0).material;
  base = machine.materials.at(static_cast<std::size_t>(base_material));
  const double e = material.E / base.E;
  const auto own = static_cast<int>(m.materials.size());
  m.materials.push_back(material);
  for (Body& body : m.bodies)
    for (Bar& bar : body.bars) bar.material = own;
  if (m.fingers) m.fingers->material = own;
  for (Member& b : m.members) b.material = own;
  for (Panel& p : m.panels) p.material = own;
  for (OwnLine& l : m.own.lines) l.material = own;
  for (OwnQuad& q : m.own.quads) q.material = own;
  scale_loads(m, s, e);
  if (m.sheet) {
    // A substitute sheet with the scaled moment: (2/sqrt3) yield t^2/4.
    const double moment = sheet_loads_of(machine, registries)->moment * s * s * e;
    Material stand_in = machine.materials.at(static_cast<std::size_t>(machine.sheet->material));
    stand_in.name += ", substitute";
    stand_in.E *= e;
    stand_in.G *= e;
    stand_in.yield = moment * 4 * std::sqrt(3.0) / 2 / (m.sheet->thickness * m.sheet->thickness);
    m.sheet->material = own + 1;
    m.sheet->moment_law = "rigid-plastic";
    m.materials.push_back(std::move(stand_in));
  }
  return m;
}

} // namespace bedbow
