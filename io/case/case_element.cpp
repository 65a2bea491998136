// The element formulation that a bar, member or panel names.
#include "io/case/case_builder.h"

namespace bedbow {

std::string element_of(const CaseBuilder& b, const CaseValues& in, int dimension) {
  const std::string name = in.text("element").value_or("");
  if (name.empty()) return name;
  std::string fitting;
  for (const ElementEntry& e : b.registries.elements.entries())
    if (e.dimension == dimension) fitting += (fitting.empty() ? "" : ", ") + e.name;
  const ElementEntry* found = b.registries.elements.find(name);
  if (found && found->dimension == dimension) return name;
  b.wrong(in, "element",
          (found ? "the element \"" + name + "\" is for " + (dimension == 1 ? "a surface" : "a line")
                 : "unknown element \"" + name + "\"") +
              "; available here: " + fitting);
  return "";
}

} // namespace bedbow
