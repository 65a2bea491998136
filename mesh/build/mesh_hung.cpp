// Members, panels and meshes that are held by joints to the apron only: they swing with it.
#include "mesh/build/mesh_builder.h"

#include <algorithm>
#include <numeric>

namespace bedbow::mesher {

namespace {

/// Nodes that move together or follow each other, by a representative.
class Groups {
public:
  explicit Groups(std::size_t n)
      : parent_(n) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }
  int of(int i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  void join(int a, int b) { parent_[of(std::max(a, b))] = of(std::min(a, b)); }

private:
  std::vector<int> parent_;
};

/// By node: whether a bar, a finger or a hold keeps it where it is.
std::vector<char> kept_nodes(const Mesh& mesh) {
  std::vector<char> out(mesh.nodes.size(), 0);
  for (const BarLayout& l : mesh.layouts)
    if (l.owner.kind == Ref::Kind::bar)
      for (int n : l.nodes) out[n] = 1;
  for (const FingerLayout& f : mesh.fingers) {
    for (int n : {f.root, f.pad, f.tip})
      if (n >= 0) out[n] = 1;
    for (int n : f.nodes) out[n] = 1;
  }
  for (int dof : mesh.held_dofs) out[dof / 6] = 1;
  return out;
}

Groups connected(const Mesh& mesh) {
  Groups groups(mesh.nodes.size());
  for (const auto& l : mesh.rigid_links) groups.join(l[0], l[1]);
  for (const BeamElement& e : mesh.beams) groups.join(e.nodes[0], e.nodes[1]);
  for (const ShellElement& e : mesh.shells)
    for (std::size_t k = 1; k < 4; ++k) groups.join(e.nodes[0], e.nodes[k]);
  return groups;
}

} // namespace

void turn_hung_parts(Builder& b) {
  Mesh& mesh = b.mesh;
  Groups groups = connected(mesh);
  const std::vector<char> kept_node = kept_nodes(mesh);
  std::vector<char> kept(mesh.nodes.size(), 0), hangs(mesh.nodes.size(), 0), apron(mesh.nodes.size(), 0); // by group
  for (std::size_t n = 0; n < mesh.nodes.size(); ++n) {
    const int g = groups.of(static_cast<int>(n));
    if (mesh.nodes[n].frame == Frame::apron) apron[g] = 1;
    if (kept_node[n]) kept[g] = 1;
  }
  const auto loose = [&](const Place& p) {
    const int g = p.ground() ? -1 : groups.of(p.terms.front().node);
    return g >= 0 && !kept[g] && !apron[g];
  };
  // Loose parts that share a joint stay or swing together.
  Groups clusters = groups;
  for (const Joint& j : mesh.joints)
    if (loose(j.a) && loose(j.b)) clusters.join(j.a.terms.front().node, j.b.terms.front().node);
  std::vector<char> stays(mesh.nodes.size(), 0); // by cluster
  for (const Joint& j : mesh.joints)
    for (const auto& [one, other] : {std::pair{&j.a, &j.b}, std::pair{&j.b, &j.a}}) {
      if (!loose(*one) || loose(*other)) continue;
      const int c = clusters.of(one->terms.front().node);
      const bool swings = !other->ground() && apron[groups.of(other->terms.front().node)];
      (swings ? hangs : stays)[c] = 1;
    }
  for (std::size_t n = 0; n < mesh.nodes.size(); ++n) {
    const int c = clusters.of(static_cast<int>(n));
    if (hangs[c] && !stays[c]) mesh.nodes[n].frame = Frame::apron;
  }
  for (Joint& j : mesh.joints)
    for (Place* p : {&j.a, &j.b})
      if (!p->ground()) p->frame = mesh.nodes[p->terms.front().node].frame;
}

} // namespace bedbow::mesher
