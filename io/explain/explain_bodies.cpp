#include "io/explain/explain_parts.h"
#include "io/text/table.h"
#include "io/text/text.h"

namespace bedbow {

namespace {

std::string role(const Body& body, int bar) {
  if (body.edge_bar != bar) return "";
  switch (body.kind) {
  case BodyKind::bed:
    return "front top edge";
  case BodyKind::clamp:
    return "nose";
  case BodyKind::apron:
    return "face";
  }
  return "";
}

std::string fingers_line(const CaseFormatter& t, const Fingers& f) {
  const auto n = f.widths.size();
  if (n == 0) return "";
  return "  nose of " + std::to_string(n) + (n == 1 ? " finger" : " fingers") +
         " from x = " + t.length(f.starts.front()) + " to " + t.length(f.starts.back() + f.widths.back()) + ", " +
         t.number(f.reach) + " long and " + t.length(f.thickness) + " thick, of " + t.material(f.material) +
         (f.root_stiffness ? "" : ", fixed at the root") + "\n";
}

} // namespace

std::string explain_bodies(const CaseFormatter& t, const Style& style) {
  const std::string u = " " + t.unit();
  TextTable table({{"bar", Align::left},
                   {"shape", Align::left},
                   {"size" + u, Align::left},
                   {"at y, z" + u, Align::left},
                   {"x from" + u},
                   {"to" + u},
                   {"material", Align::left},
                   {"model", Align::left},
                   {"carries", Align::left}});
  for (const Body& body : t.machine().bodies)
    for (std::size_t i = 0; i < body.bars.size(); ++i) {
      const Bar& bar = body.bars[i];
      table.row({printable(to_string(body.kind) + "." + bar.name), printable(bar.shape.kind), t.sizes(bar.shape),
                 t.place({bar.at.x(), bar.at.y()}), t.number(bar.start), t.number(bar.end()), t.material(bar.material),
                 word_for(bar_models, bar.model), role(body, static_cast<int>(i))});
    }
  return table.empty() ? "" : style.bold("Bodies") + "\n" + table.render(style) + "\n";
}

std::string explain_sheet(const CaseFormatter& t, const Style& style) {
  const Machine& m = t.machine();
  if (!m.sheet) return "";
  const Sheet& s = *m.sheet;
  std::string out = style.bold("Sheet") + "\n";
  out += "  " + t.length(s.thickness) + " " + t.material(s.material) + ", " + t.length(s.width) +
         " wide from x = " + t.number(s.left()) + " to " + t.length(s.right()) + "\n";
  out += "  bent to " + CaseFormatter::degrees(s.angle) + " over an inside radius of " + t.length(s.inside_radius) +
         ", flange " + t.length(s.flange) + ", grip " + t.length(s.grip) + ", law " +
         (s.moment_law.empty() ? "with the greater moment" : printable(s.moment_law)) + "\n";
  if (m.nose.bar >= 0)
    out += "  held by a nose whose edge is at y = " + t.length(m.nose.setback) +
           (m.nose.radius > 0 ? ", rounded to " + t.length(m.nose.radius) : "") + ", bearing over " +
           t.length(m.nose.land) + "\n";
  if (m.fingers) out += fingers_line(t, *m.fingers);
  return out + "\n";
}

} // namespace bedbow
