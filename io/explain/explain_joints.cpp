#include "io/explain/explain_parts.h"
#include "io/text/table.h"
#include "io/text/text.h"
#include "mesh/machine/end_float.h"

#include <array>
#include <cmath>
#include <type_traits>

namespace bedbow {

namespace {

std::string name_of(const std::string& kind, const std::string& name, std::size_t index) {
  return kind + " " + (name.empty() ? std::to_string(index + 1) : printable(name));
}

std::string mask(const DofMask& holds) {
  static constexpr std::array names{"x", "y", "z", "rx", "ry", "rz"};
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i)
    if (holds[i]) out.append(out.empty() ? "" : " ").append(names[i]);
  return out;
}

std::string size_of(const CaseFormatter& t, const std::string& thread, double diameter, const std::string& grade) {
  return (thread.empty() ? "dia " + t.length(diameter) : thread) + (grade.empty() ? "" : ", class " + printable(grade));
}

std::string stiffness(const CaseFormatter& t, const std::optional<double>& along, const std::optional<double>& about) {
  std::string out;
  if (along) out += ", " + t.stiffness(*along);
  if (about) out += ", " + short_number(*about) + " N*m/rad";
  return out.empty() ? ", rigid" : out;
}

std::string told(const CaseFormatter& t, const Post& p) {
  const std::string load = p.preload ? ", preload " + t.force(*p.preload) : "";
  return size_of(t, p.thread, p.diameter, p.grade) + ", " + t.length(p.free_length) + " free" + load;
}

std::string told(const CaseFormatter& t, const Cam& c) {
  const std::string turned = c.angle ? " (at " + CaseFormatter::degrees(*c.angle - c.lag) + ")" : "";
  return "lifts " + t.length(c.lift) + turned + (c.linked ? ", linked" : "");
}

/// \param play total end float [m]
std::string told(const CaseFormatter& t, const Hinge& h, double play) {
  const std::string along = play == 0             ? "locates the apron along x"
                            : std::isfinite(play) ? "end float " + t.length(play)
                                                  : "floats along x";
  return (std::isfinite(h.pin) ? "pin " + t.length(h.pin) : "free about x") + ", " + along;
}

std::string told(const CaseFormatter& t, const Tie& tie) {
  const char* only = tie.only == UnilateralType::tension       ? ", tension only"
                     : tie.only == UnilateralType::compression ? ", compression only"
                                                               : "";
  return "holds " + mask(tie.holds) + stiffness(t, tie.stiffness, tie.rotational_stiffness) + only;
}

std::string told(const CaseFormatter& t, const Screws& s) {
  return std::to_string(s.x.size()) + " of " + size_of(t, s.thread, s.diameter, s.grade) +
         (s.x.empty() ? "" : ", x = " + t.number(s.x.front()) + " to " + t.length(s.x.back())) +
         (s.shear_stiffness ? ", " + t.stiffness(*s.shear_stiffness) + " each" : "");
}

std::string told(const CaseFormatter& t, const Weld& w) {
  if (std::isnan(w.from) && std::isnan(w.to)) return "over the whole common length";
  return "x = " + t.number(w.from) + " to " + t.length(w.to);
}

std::string told(const CaseFormatter& t, const Support& s) {
  return "holds " + mask(s.holds) + stiffness(t, s.stiffness, s.rotational_stiffness);
}

std::string told(const CaseFormatter&, const Handle&) {
  return "stops rotation about x";
}

/// A kind without words of its own: how stiff it is.
template <class Joint> std::string told(const CaseFormatter& t, const Joint& j) {
  return stiffness(t, j.stiffness, std::nullopt).substr(2);
}

} // namespace

std::string explain_joints(const CaseFormatter& t, const Style& style) {
  const Machine& m = t.machine();
  TextTable table({{"joint", Align::left},
                   {"joins", Align::left},
                   {"at x, y, z " + t.unit(), Align::left},
                   {"description", Align::left}});
  m.each_joint_list([&](JointKind kind, const auto& list) {
    const bool handle = kind == JointKind::handle; // of the apron, wherever along x
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto& j = list[i];
      const std::string words = [&] {
        if constexpr (std::is_same_v<decltype(j), const Hinge&>)
          return told(t, j, end_float_of(m, i));
        else
          return told(t, j);
      }();
      table.row({name_of(info(kind).key, j.name, i),
                 printable(m.name_of(j.joins[0]) + (handle ? "" : " - " + m.name_of(j.joins[1]))),
                 handle ? t.place({j.at.x()}) : t.place({j.at.x(), j.at.y(), j.at.z()}), words});
    }
  });
  return table.empty() ? "" : style.bold("Joints") + "\n" + table.render(style) + "\n";
}

} // namespace bedbow
