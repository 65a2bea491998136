#include "solver/assembly/assembly.h"

#include "solver/assembly/block_matrix.h"

#include <cmath>

namespace bedbow {

namespace {

/// Adds an element matrix through the rigid arms of its nodes.
template <class Nodes, class M> void add_element(BlockMatrix& k, const DofMap& map, const Nodes& nodes, const M& e) {
  for (int p = 0; p < static_cast<int>(nodes.size()); ++p)
    for (int q = 0; q <= p; ++q) {
      const NodeLink& row = map.links[nodes[static_cast<std::size_t>(p)]];
      const NodeLink& column = map.links[nodes[static_cast<std::size_t>(q)]];
      Matrix6d block = e.template block<6, 6>(6 * p, 6 * q);
      if (!row.arm.isZero(0)) block = carry(row.arm).transpose() * block;
      if (!column.arm.isZero(0)) block = block * carry(column.arm);
      k.add(row.ref, column.ref, block);
      // Two nodes of one rigid group: the mirrored block falls on the same diagonal block.
      if (p != q && row.ref == column.ref) k.add(row.ref, column.ref, block.transpose());
    }
}

struct CarriedTerm {
  int ref;
  Matrix6d movement; ///< signed share in the joint's elongation
};

std::vector<CarriedTerm> stretch_terms(const DofMap& map, const Joint& j) {
  std::vector<CarriedTerm> terms;
  for (auto [place, sign] : {std::pair{&j.a, -1.0}, std::pair{&j.b, 1.0}})
    for (const PlaceTerm& t : place->terms) {
      const NodeLink& l = map.links[t.node];
      terms.push_back({l.ref, sign * t.movement * carry(l.arm)});
    }
  return terms;
}

void add_spring(BlockMatrix& k, const DofMap& map, const Joint& j) {
  const auto terms = stretch_terms(map, j);
  const Vector6d s = Eigen::Map<const Vector6d>(j.stiffness.data());
  for (std::size_t p = 0; p < terms.size(); ++p)
    for (std::size_t q = 0; q <= p; ++q) {
      const Matrix6d block = terms[p].movement.transpose() * s.asDiagonal() * terms[q].movement;
      k.add(terms[p].ref, terms[q].ref, block);
      if (p != q && terms[p].ref == terms[q].ref) k.add(terms[p].ref, terms[q].ref, block.transpose());
    }
}

/// Couplings of reference nodes, by component.
std::vector<std::vector<std::pair<int, int>>> couplings(const Mesh& mesh, const DofMap& map) {
  std::vector<std::vector<std::pair<int, int>>> out(map.substructures.size());
  const auto couple = [&](int a, int b) {
    const int i = map.links[a].ref;
    const int j = map.links[b].ref;
    if (i != j) out[map.substructure[i]].emplace_back(i, j);
  };
  for (const auto& e : mesh.beams) couple(e.nodes[0], e.nodes[1]);
  for (const StripElement& s : mesh.strips) {
    const std::vector<int> nodes = nodes_of(mesh, s);
    for (std::size_t p = 0; p < nodes.size(); ++p)
      for (std::size_t q = 0; q < p; ++q) couple(nodes[p], nodes[q]);
  }
  for (const auto& e : mesh.shells)
    for (std::size_t p = 0; p < 4; ++p)
      for (std::size_t q = 0; q < p; ++q) couple(e.nodes[p], e.nodes[q]);
  for (const Joint& j : mesh.joints) {
    if (!is_bonded(j)) continue;
    const auto terms = stretch_terms(map, j);
    for (std::size_t p = 0; p < terms.size(); ++p)
      for (std::size_t q = 0; q < p; ++q) couple(terms[p].ref, terms[q].ref);
  }
  return out;
}

/// Shell matrices one after the other: neighbours in a strip differ in position only, and share a matrix.
class ShellMatrices {
public:
  ShellMatrices(const Machine& machine, const Mesh& mesh, const ElementData& data)
      : machine_(machine)
      , mesh_(mesh)
      , data_(data) {}
  const Matrix24d& of(int i) {
    const ShellElement& e = mesh_.shells[i];
    const Corners c = corners_of(mesh_, e);
    if (last_ < 0 || !alike(i, c)) {
      matrix_ = shell_stiffness_of(machine_, mesh_, data_, i);
      corners_ = c;
      last_ = i;
    }
    return matrix_;
  }

private:
  [[nodiscard]] bool alike(int i, const Corners& c) const {
    const ShellElement& e = mesh_.shells[i];
    const ShellElement& p = mesh_.shells[last_];
    if (data_.own.shell(i) != data_.own.shell(last_)) return false;
    if (e.material != p.material || e.thickness != p.thickness) return false;
    const double near = 1e-12 * (c[2] - c[0]).norm();
    for (std::size_t k = 1; k < 4; ++k)
      if (((c[k] - c[0]) - (corners_[k] - corners_[0])).norm() > near) return false;
    return true;
  }

  const Machine& machine_;
  const Mesh& mesh_;
  const ElementData& data_;
  Matrix24d matrix_;
  Corners corners_;
  int last_ = -1;
};

} // namespace

std::vector<SymmetricMatrix> assemble(const Mesh& mesh, const DofMap& map, const BeamMatrix& beams,
                                      const StripMatrix& strips, const ShellMatrix& shells, bool with_screws) {
  std::vector<int> position(mesh.nodes.size(), -1);
  for (const Substructure& c : map.substructures)
    for (std::size_t i = 0; i < c.nodes.size(); ++i) position[c.nodes[i]] = static_cast<int>(i);
  auto pairs = couplings(mesh, map);
  std::vector<BlockMatrix> blocks;
  blocks.reserve(map.substructures.size());
  for (std::size_t c = 0; c < map.substructures.size(); ++c)
    blocks.emplace_back(map, map.substructures[c], position, std::move(pairs[c]));
  for (std::size_t i = 0; i < mesh.beams.size(); ++i)
    add_element(blocks[map.substructure[mesh.beams[i].nodes[0]]], map, mesh.beams[i].nodes, beams(static_cast<int>(i)));
  for (std::size_t i = 0; i < mesh.strips.size(); ++i) {
    const std::vector<int> nodes = nodes_of(mesh, mesh.strips[i]);
    add_element(blocks[map.substructure[nodes.front()]], map, nodes, strips(static_cast<int>(i)));
  }
  for (std::size_t i = 0; i < mesh.shells.size(); ++i)
    add_element(blocks[map.substructure[mesh.shells[i].nodes[0]]], map, mesh.shells[i].nodes,
                shells(static_cast<int>(i)));
  if (with_screws)
    for (const Joint& j : mesh.joints)
      if (is_bonded(j)) add_spring(blocks[map.substructure[j.a.terms.front().node]], map, j);
  std::vector<SymmetricMatrix> out;
  out.reserve(blocks.size()); // reallocation would copy matrices
  for (BlockMatrix& b : blocks) out.push_back(b.take());
  return out;
}

std::vector<SymmetricMatrix> assemble_stiffness(const Machine& machine, const Mesh& mesh, const DofMap& map,
                                                const ElementData& data) {
  // Neighbouring elements of a bar are identical: the last matrix is reused while data, length and axes are the same.
  Matrix12d last;
  int last_element = -1;
  const BeamMatrix beams = [&](int i) -> const Matrix12d& {
    const BeamElement& e = mesh.beams[i];
    if (last_element >= 0) {
      const BeamElement& p = mesh.beams[last_element];
      if (data.of_beam[i] == data.of_beam[last_element] && equal_lengths(e.length, p.length) && e.axes == p.axes &&
          e.release_a == p.release_a && e.release_b == p.release_b)
        return last;
    }
    last = beam_stiffness_of(mesh, data, i);
    last_element = i;
    return last;
  };
  ShellMatrices shells(machine, mesh, data);
  return assemble(
      mesh, map, beams, [&](int i) -> const Eigen::MatrixXd& { return data.bending[data.of_bending[i]]; },
      [&](int i) -> const Matrix24d& { return shells.of(i); }, true);
}

FactorHints hints_of(const Substructure& component, bool plane) {
  FactorHints h;
  h.block = plane ? 3 : 6;
  h.positive = true;
  h.banded_order = component.banded_by_station;
  return h;
}

} // namespace bedbow
