#include "io/results/arm_seats_table.h"

#include "io/text/text.h"

namespace bedbow {

std::string arm_seats_title(const OutputUnits& units) {
  return "Joints on rigid arms: greatest force [" + units.force.name +
         "] by the size of the seat, which the case omits [" + units.length.name + "]";
}

TextTable arm_seats_rows(const Findings& f, const OutputUnits& u) {
  if (!f.arm_seats) return TextTable({});
  const auto length = [&](double v) { return in_unit(v, u.length, 1e-4); };
  const std::string small = length(small_seat);
  TextTable t({{"joint", Align::left},
               {"on", Align::left},
               {"arm"},
               {"seat", Align::left},
               {"force"},
               {"with " + small + " x " + small}});
  const bool solved = f.arm_seats->status == Status::ok;
  for (const ArmSeat& j : f.arm_seats->joints)
    t.row({std::string(info(j.kind).key) + " " + printable(j.name), printable(j.on), length(j.arm),
           length(j.along) + " x " + length(j.across), in_unit(j.force, u.force, 1),
           solved ? in_unit(j.force_small, u.force, 1) : "-"});
  return t;
}

} // namespace bedbow
