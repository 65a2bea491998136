#include "solver/findings/hinge_assumptions.h"

#include "mesh/machine/end_float.h"

#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

using Names = std::vector<std::string>;

/// "hinge left, hinge right float": names with the verb for one or for several.
std::string what_they_do(const Names& names, const char* one, const char* several) {
  std::string out;
  for (const std::string& n : names) out.append(out.empty() ? "" : ", ").append(n);
  return out + (names.size() == 1 ? one : several);
}

/// Joints other than hinges between the apron and the rest that hold it along x, both ways.
Names other_x_holds(const Mesh& mesh) {
  Names out;
  for (const Joint& j : mesh.joints)
    if (j.kind != JointKind::hinge && j.stiffness[ux] > 0 && j.sense[ux] == UnilateralType::both &&
        j.axes.isIdentity(0) && (j.a.frame == Frame::apron) != (j.b.frame == Frame::apron))
      out.push_back(with_kind(info(j.kind).key, j.name));
  return out;
}

std::string play_words(const std::string& hinge, double play) {
  char text[80];
  std::snprintf(text, sizeof text, " has an end float of %.4g mm along its pin, half each way", play * 1e3);
  return hinge + text;
}

/// \param lock the hinges that lock the apron.
std::string located_words(const Machine& machine, const Mesh& mesh, const Names& lock) {
  if (lock.size() == 1 && !machine.hinges.front().end_float)
    return lock.front() + ", the first in the file, locates the apron along x";
  if (!lock.empty()) return what_they_do(lock, " locates", " lock") + " the apron along x";
  const std::string none = "no hinge locates the apron along x: ";
  if (const Names others = other_x_holds(mesh); !others.empty()) return none + what_they_do(others, " does", " do");
  return none + "it stands in the middle of its end float, kept there by 1 N/mm at each hinge with play (own choice), "
                "until a force pushes it against a stop";
}

} // namespace

std::vector<std::string> hinge_assumptions(const Machine& machine, const Mesh& mesh) {
  Names out, lock, floats;
  for (std::size_t i = 0; i < machine.hinges.size(); ++i) {
    const std::string& name = machine.hinges[i].name;
    const std::string hinge = name.empty() ? numbered(JointKind::hinge, i) : with_kind("hinge", name);
    const double play = end_float_of(machine, i);
    if (play == 0)
      lock.push_back(hinge);
    else if (std::isfinite(play))
      out.push_back(play_words(hinge, play));
    else
      floats.push_back(hinge);
  }
  if (machine.hinges.empty()) return out;
  std::string text = located_words(machine, mesh, lock);
  if (!floats.empty()) text += "; " + what_they_do(floats, " floats along its pin", " float along their pins");
  out.push_back(text +
                "; thrust along the pins is not checked: the case describes no collar or shoulder that takes it");
  return out;
}

} // namespace bedbow
