#include "io/explain/explain_parts.h"
#include "io/text/table.h"
#include "io/text/text.h"

#include <set>

namespace bedbow {

namespace {

using Eigen::Vector3d;

std::string at(const CaseFormatter& t, const Vector3d& p) {
  return t.place({p.x(), p.y(), p.z()});
}

std::string explain_members(const CaseFormatter& t, const Style& style) {
  TextTable table({{"part", Align::left},
                   {"from x, y, z " + t.unit(), Align::left},
                   {"to " + t.unit(), Align::left},
                   {"size " + t.unit(), Align::left},
                   {"material", Align::left}});
  const Machine& m = t.machine();
  for (std::size_t i = 0; i < m.members.size(); ++i) {
    const Member& x = m.members[i];
    table.row({"member " + (x.name.empty() ? std::to_string(i + 1) : printable(x.name)), at(t, x.from), at(t, x.to),
               printable(x.shape.kind) + " " + t.sizes(x.shape), t.material(x.material)});
  }
  for (std::size_t i = 0; i < m.panels.size(); ++i) {
    const Panel& x = m.panels[i];
    table.row({"panel " + (x.name.empty() ? std::to_string(i + 1) : printable(x.name)), at(t, x.corner),
               at(t, x.corner + x.edge_a + x.edge_b), "plate " + t.number(x.thickness), t.material(x.material)});
  }
  return table.empty() ? "" : style.bold("Members and panels") + "\n" + table.render(style) + "\n";
}

/// Counts of a part's cells, their thickness and materials.
struct PartTold {
  std::size_t lines = 0, quads = 0;
  std::set<std::string> sizes, materials;
};

std::string in_words(const std::set<std::string>& words) {
  std::string out;
  for (const std::string& w : words) out.append(out.empty() ? "" : ", ").append(w);
  return out;
}

std::string explain_mesh(const CaseFormatter& t, const Style& style) {
  const UserMesh& own = t.machine().own;
  std::vector<PartTold> parts(own.parts.size());
  for (const OwnLine& l : own.lines) {
    PartTold& p = parts[static_cast<std::size_t>(l.part)];
    const Shape& shape = own.sections[static_cast<std::size_t>(l.section)].shape;
    ++p.lines;
    p.sizes.insert(printable(shape.kind) + " " + t.sizes(shape));
    p.materials.insert(t.material(l.material));
  }
  for (const OwnQuad& q : own.quads) {
    PartTold& p = parts[static_cast<std::size_t>(q.part)];
    ++p.quads;
    p.sizes.insert("plate " + t.number(q.thickness));
    p.materials.insert(t.material(q.material));
  }
  TextTable table({{"part", Align::left},
                   {"lines", Align::right},
                   {"quads", Align::right},
                   {"size " + t.unit(), Align::left},
                   {"material", Align::left}});
  for (std::size_t i = 0; i < parts.size(); ++i)
    table.row({printable(t.machine().plain_name({Ref::Kind::own, BodyKind::bed, static_cast<int>(i)})),
               std::to_string(parts[i].lines), std::to_string(parts[i].quads), in_words(parts[i].sizes),
               in_words(parts[i].materials)});
  return table.empty() ? "" : style.bold("User's mesh") + "\n" + table.render(style) + "\n";
}

std::string told(const CaseFormatter& t, const Load& load) {
  const Machine& m = t.machine();
  const std::string on = load.on.kind == Ref::Kind::none ? "" : " on " + printable(m.name_of(load.on));
  const auto forces = [&](const Vector3d& f) {
    const double unit = t.what().output.force.size;
    return "[" + short_number(f.x() / unit) + ", " + short_number(f.y() / unit) + ", " + short_number(f.z() / unit) +
           "] " + t.what().output.force.name;
  };
  switch (load.kind) {
  case Load::Kind::pressure:
    return "pressure " + short_number(load.pressure) + " Pa" +
           (load.panel < 0 ? on : " on panel " + printable(m.panels[static_cast<std::size_t>(load.panel)].name));
  case Load::Kind::line:
    return forces(load.force * t.what().output.length.size) + "/" + t.unit() + on + " from [" + at(t, load.from) +
           "] to [" + at(t, load.to) + "] " + t.unit();
  case Load::Kind::point:
  case Load::Kind::set:
    break;
  }
  const Vector3d& c = load.moment;
  const std::string moment =
      c.isZero() ? ""
                 : " and [" + short_number(c.x()) + ", " + short_number(c.y()) + ", " + short_number(c.z()) + "] N*m";
  if (load.kind == Load::Kind::set) {
    const PointSet& set = m.own.sets[static_cast<std::size_t>(load.set)];
    return forces(load.force) + moment + " shared by the " + std::to_string(set.points.size()) + " points of " +
           printable(set.name);
  }
  return forces(load.force) + moment + on + " at [" + at(t, load.from) + "] " + t.unit();
}

std::string explain_loads(const CaseFormatter& t, const Style& style) {
  std::string lines;
  for (const Load& load : t.machine().loads) lines += "  " + told(t, load) + "\n";
  if (t.machine().gravity) lines += "  self-weight along -z\n";
  return lines.empty() ? "" : style.bold("Loads") + "\n" + lines + "\n";
}

std::string explain_dials(const CaseFormatter& t, const Style& style) {
  TextTable table(
      {{"dial", Align::left}, {"on", Align::left}, {"at x, y, z " + t.unit(), Align::left}, {"reading", Align::left}});
  for (const Dial& d : t.machine().dials)
    table.row(
        {printable(d.name), printable(t.machine().name_of(d.on)), at(t, d.at),
         d.reading ? t.length(*d.reading) + " along " + std::string(1, static_cast<char>('x' + d.direction)) : "-"});
  return table.empty() ? "" : style.bold("Dials") + "\n" + table.render(style) + "\n";
}

} // namespace

std::string explain_structure(const CaseFormatter& t, const Style& style) {
  return explain_members(t, style) + explain_mesh(t, style) + explain_loads(t, style) + explain_dials(t, style);
}

} // namespace bedbow
