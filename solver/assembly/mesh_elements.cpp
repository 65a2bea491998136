#include "solver/assembly/mesh_elements.h"

#include "solver/element/parameters.h"

#include <map>
#include <stdexcept>

namespace bedbow {

namespace {

const BeamData& beam_data_of(const ElementData& data, int element) {
  return data.beams[data.of_beam[element]];
}

/// Input of the formulation that the bar names.
ElementInput line_input(const ElementEntry& own, const Mesh& mesh, const ElementData& data, int element) {
  const BeamElement& e = mesh.beams[element];
  ElementInput in{Eigen::Matrix3Xd(3, 2),
                  line_parameters(own, beam_data_of(data, element), data.nu[data.of_beam[element]]), e.axes};
  in.corners << mesh.nodes[e.nodes[0]].x, mesh.nodes[e.nodes[1]].x;
  return in;
}

ElementInput surface_input(const ElementEntry& own, const Corners& corners, const ShellData& data) {
  ElementInput in{Eigen::Matrix3Xd(3, 4), surface_parameters(own, data), shell_axes(corners)};
  for (int i = 0; i < 4; ++i) in.corners.col(i) = corners[static_cast<std::size_t>(i)];
  return in;
}

/// From global axes to the beam's.
Matrix12d to_local(const Matrix12d& global, const BeamElement& e) {
  return beam_to_global(global, e.axes.transpose());
}

ShellData shell_data_of(const Machine& machine, const ShellElement& e) {
  const Material& m = machine.materials.at(e.material);
  return {m.E, m.nu, e.thickness, m.density};
}

void add_strips(const Mesh& mesh, ElementData& data) {
  if (mesh.strips.empty()) return;
  data.strip_of_beam.assign(mesh.beams.size(), -1);
  double last = 0; // length of the last element
  for (std::size_t i = 0; i < mesh.strips.size(); ++i) {
    const StripElement& strip = mesh.strips[i];
    const BeamElement& beam = mesh.beams[static_cast<std::size_t>(strip.beam)];
    data.strip_of_beam[static_cast<std::size_t>(strip.beam)] = static_cast<int>(i);
    const auto across = static_cast<std::size_t>(strip.across);
    const bool fresh = across == data.strips.size();
    if (fresh)
      data.strips.push_back(make_strip_section(mesh.across[across], strip.flat, beam_data_of(data, strip.beam),
                                               data.nu[data.of_beam[strip.beam]]));
    if (fresh || !equal_lengths(beam.length, last))
      data.bending.push_back(strip_stiffness(data.strips[across], beam.length));
    data.of_bending.push_back(static_cast<int>(data.bending.size()) - 1);
    last = beam.length;
  }
}

} // namespace

ElementData make_element_data(const Machine& machine, const Mesh& mesh, const Registry<ElementEntry>& elements) {
  ElementData data;
  data.own = custom_elements(machine, mesh, elements);
  std::map<std::array<int, 3>, int> known;
  data.of_beam.reserve(mesh.beams.size());
  data.of_lateral.reserve(mesh.beams.size());
  data.plain.reserve(mesh.beams.size());
  for (std::size_t i = 0; i < mesh.beams.size(); ++i) {
    const BeamElement& e = mesh.beams[i];
    const int own = data.own.of_beam.empty() ? -1 : data.own.of_beam[i];
    const auto [it, fresh] = known.try_emplace({e.section, e.material, own}, static_cast<int>(data.beams.size()));
    if (fresh) {
      const Material& m = machine.materials.at(e.material);
      data.nu.push_back(m.nu);
      data.beams.push_back({m.E, m.G, m.density, mesh.sections[e.section].props});
    }
    data.of_beam.push_back(it->second);
    if (i == 0 || data.of_beam[i - 1] != it->second || !equal_lengths(e.length, mesh.beams[i - 1].length))
      data.lateral.push_back(beam::lateral(data.beams[it->second], e.length));
    data.of_lateral.push_back(static_cast<int>(data.lateral.size()) - 1);
    data.plain.push_back(e.axes.isIdentity(0) && !releases_of(e).any);
  }
  add_strips(mesh, data);
  return data;
}

void require_geometric(const CustomElements& own) {
  for (const ElementEntry& e : own.entries)
    if (!e.geometric)
      throw std::invalid_argument("element '" + e.name + "' (" + e.origin +
                                  ") provides no geometric stiffness, so buckling can't be computed; disable "
                                  "buckling (modes --buckling 0) or use another element");
}

Matrix12d beam_local_stiffness(const Mesh& mesh, const ElementData& data, int element) {
  const BeamElement& e = mesh.beams[element];
  const ElementEntry* own = data.own.beam(element);
  if (!own) return beam_stiffness(beam_data_of(data, element), e.length);
  return to_local(own->stiffness(line_input(*own, mesh, data, element)), e);
}

Matrix12d beam_local_mass(const Mesh& mesh, const ElementData& data, int element, bool lumped) {
  const BeamElement& e = mesh.beams[element];
  const ElementEntry* own = data.own.beam(element);
  if (!own || !own->mass) return beam_mass(beam_data_of(data, element), e.length, lumped || own);
  return to_local(own->mass(line_input(*own, mesh, data, element), lumped), e);
}

Matrix12d beam_local_geometric(const Mesh& mesh, const ElementData& data, int element, const SectionForces& at_1,
                               const SectionForces& at_2) {
  const BeamElement& e = mesh.beams[element];
  const ElementEntry* own = data.own.beam(element);
  if (!own) return beam_geometric(beam_data_of(data, element), e.length, at_1, at_2);
  require_geometric(data.own);
  const std::array<double, 12> state{at_1.N, at_1.Vy, at_1.Vz, at_1.T, at_1.My, at_1.Mz,
                                     at_2.N, at_2.Vy, at_2.Vz, at_2.T, at_2.My, at_2.Mz};
  return to_local(own->geometric(line_input(*own, mesh, data, element), state), e);
}

Vector12d beam_local_load(const Mesh& mesh, const ElementData& data, int element, const BeamLineLoad& load) {
  const BeamElement& e = mesh.beams[element];
  const ElementEntry* own = data.own.beam(element);
  if (!own || !own->load) return beam::load(data.lateral[data.of_lateral[element]], e.length, load);
  Vector6d global;
  global << e.axes.transpose() * load.force, e.axes.transpose() * load.moment;
  return beam_to_local(Vector12d(own->load(line_input(*own, mesh, data, element), {global.data(), 6})), e.axes);
}

Matrix12d beam_stiffness_of(const Mesh& mesh, const ElementData& data, int element) {
  const BeamElement& e = mesh.beams[element];
  Matrix12d k = beam_local_stiffness(mesh, data, element);
  const BeamReleases releases = releases_of(e);
  if (releases.any) k = beam_release(k, Vector12d::Zero(), releases.dofs).stiffness;
  return e.axes.isIdentity(0) ? k : beam_to_global(k, e.axes);
}

Eigen::VectorXd strip_unknowns(const Mesh& mesh, const StripElement& strip, const std::vector<Vector6d>& motion) {
  const std::vector<int> nodes = nodes_of(mesh, strip);
  Eigen::VectorXd u(6 * static_cast<Eigen::Index>(nodes.size()));
  for (std::size_t k = 0; k < nodes.size(); ++k)
    u.segment<6>(6 * static_cast<Eigen::Index>(k)) = motion[static_cast<std::size_t>(nodes[k])];
  return u;
}

Corners corners_of(const Mesh& mesh, const ShellElement& e) {
  return {mesh.nodes[e.nodes[0]].x, mesh.nodes[e.nodes[1]].x, mesh.nodes[e.nodes[2]].x, mesh.nodes[e.nodes[3]].x};
}

Matrix24d shell_stiffness_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element) {
  const ShellElement& e = mesh.shells[element];
  const Corners corners = corners_of(mesh, e);
  const ShellData shell = shell_data_of(machine, e);
  const ElementEntry* own = data.own.shell(element);
  return own ? Matrix24d(own->stiffness(surface_input(*own, corners, shell))) : shell_stiffness(corners, shell);
}

Matrix24d shell_mass_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element, bool lumped) {
  const ShellElement& e = mesh.shells[element];
  const Corners corners = corners_of(mesh, e);
  const ShellData shell = shell_data_of(machine, e);
  const ElementEntry* own = data.own.shell(element);
  if (!own || !own->mass) return shell_mass(corners, shell, lumped || own);
  return own->mass(surface_input(*own, corners, shell), lumped);
}

Matrix24d shell_geometric_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element,
                             const Vector24d& u) {
  const ShellElement& e = mesh.shells[element];
  const Corners corners = corners_of(mesh, e);
  const ShellData shell = shell_data_of(machine, e);
  const auto at_gauss = shell_gauss_resultants(corners, shell, u);
  const ElementEntry* own = data.own.shell(element);
  if (!own) return shell_geometric(corners, shell, {at_gauss[0].n, at_gauss[1].n, at_gauss[2].n, at_gauss[3].n});
  require_geometric(data.own);
  std::vector<double> state;
  for (const ShellResultants& r : at_gauss)
    state.insert(state.end(), {r.n[0], r.n[1], r.n[2], r.m[0], r.m[1], r.m[2], r.q[0], r.q[1]});
  return own->geometric(surface_input(*own, corners, shell), state);
}

Vector24d shell_load_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element,
                        const Eigen::Vector3d& traction) {
  const ShellElement& e = mesh.shells[element];
  const Corners corners = corners_of(mesh, e);
  const ElementEntry* own = data.own.shell(element);
  if (!own || !own->load) return shell_load(corners, traction);
  return own->load(surface_input(*own, corners, shell_data_of(machine, e)), {traction.data(), 3});
}

} // namespace bedbow
