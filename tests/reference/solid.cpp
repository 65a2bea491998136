#include "tests/reference/solid.h"

#include <getfem/getfem_generic_assembly.h>
#include <getfem/getfem_model_solvers.h>
#include <getfem/getfem_models.h>

#include <cmath>
#include <memory>
#include <stdexcept>

namespace referee {

namespace {

constexpr double near = 1e-6;

std::vector<double> divided(const std::vector<double>& lines, double size) {
  std::vector<double> out{lines.front()};
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const double from = lines[i - 1], run = lines[i] - from;
    const int n = std::max(1, static_cast<int>(std::ceil(run / size - near)));
    for (int k = 1; k <= n; ++k) out.push_back(from + run * k / n);
  }
  return out;
}

bool inside(const Box& box, const bgeot::base_node& p) {
  for (int k = 0; k < 3; ++k)
    if (p[k] < box.lower[k] - near || p[k] > box.upper[k] + near) return false;
  return true;
}

bool flat(const Box& box) {
  for (int k = 0; k < 3; ++k)
    if (box.upper[k] - box.lower[k] < near) return true;
  return false;
}

double measure(const Box& box) {
  double m = 1;
  for (int k = 0; k < 3; ++k)
    if (box.upper[k] - box.lower[k] > near) m *= box.upper[k] - box.lower[k];
  return m;
}

void fill(getfem::mesh& mesh, const Problem& p, double size) {
  std::array<std::vector<double>, 3> g;
  for (int k = 0; k < 3; ++k) g[k] = divided(p.lines[k], size);
  for (std::size_t i = 1; i < g[0].size(); ++i)
    for (std::size_t j = 1; j < g[1].size(); ++j)
      for (std::size_t k = 1; k < g[2].size(); ++k) {
        const bgeot::base_node middle((g[0][i - 1] + g[0][i]) / 2, (g[1][j - 1] + g[1][j]) / 2,
                                      (g[2][k - 1] + g[2][k]) / 2);
        bool solid = false;
        for (const Box& b : p.solid) solid = solid || inside(b, middle);
        if (!solid) continue;
        std::vector<bgeot::base_node> corners;
        for (int c = 0; c < 8; ++c)
          corners.emplace_back(g[0][i - 1 + (c & 1)], g[1][j - 1 + (c >> 1 & 1)], g[2][k - 1 + (c >> 2 & 1)]);
        mesh.add_convex_by_points(bgeot::parallelepiped_geotrans(3, 1), corners.begin());
      }
}

/// Elements, or faces of the outer surface, whose points all lie in the box.
void mark(getfem::mesh& mesh, const Box& box, std::size_t region) {
  if (!flat(box)) {
    for (dal::bv_visitor cv(mesh.convex_index()); !cv.finished(); ++cv) {
      bool all = true;
      for (const auto& point : mesh.points_of_convex(cv)) all = all && inside(box, point);
      if (all) mesh.region(region).add(cv);
    }
    return;
  }
  getfem::mesh_region outer;
  getfem::outer_faces_of_mesh(mesh, outer);
  for (getfem::mr_visitor f(outer); !f.finished(); ++f) {
    bool all = true;
    for (const auto& point : mesh.points_of_face_of_convex(f.cv(), f.f())) all = all && inside(box, point);
    if (all) mesh.region(region).add(f.cv(), f.f());
  }
}

std::string text(double v) {
  char out[40];
  std::snprintf(out, sizeof out, "(%.17g)", v);
  return out;
}

void pin_down(getfem::model& model, const std::vector<Pin>& pins) {
  if (pins.empty()) return;
  std::vector<double> points, directions;
  for (const Pin& pin : pins)
    for (int k = 0; k < 3; ++k) {
      if (!pin.directions[k]) continue;
      points.insert(points.end(), pin.at.begin(), pin.at.end());
      for (int c = 0; c < 3; ++c) directions.push_back(c == k ? 1 : 0);
    }
  model.add_initialized_fixed_size_data("pin_points", points);
  model.add_initialized_fixed_size_data("pin_directions", directions);
  getfem::add_pointwise_constraints_with_multipliers(model, "u", "pin_points", "pin_directions");
}

/// What a solution needs to be asked later.
struct Kept {
  getfem::mesh mesh;
  std::unique_ptr<getfem::mesh_fem> fem;
  std::vector<double> u;
};

} // namespace

Solution solve(const Problem& p, double size) {
  auto kept = std::make_shared<Kept>();
  fill(kept->mesh, p, size);
  kept->fem = std::make_unique<getfem::mesh_fem>(kept->mesh, 3);
  kept->fem->set_finite_element(getfem::fem_descriptor("FEM_QK(3,2)"));
  getfem::mesh_im integration(kept->mesh);
  integration.set_integration_method(getfem::int_method_descriptor("IM_GAUSS_PARALLELEPIPED(3,5)"));
  getfem::model model;
  model.add_fem_variable("u", *kept->fem);
  model.add_initialized_scalar_data("lambda", p.E * p.nu / ((1 + p.nu) * (1 - 2 * p.nu)));
  model.add_initialized_scalar_data("mu", p.E / (2 * (1 + p.nu)));
  getfem::add_isotropic_linearized_elasticity_brick(model, integration, "u", "lambda", "mu");
  std::size_t region = 1;
  for (const SpreadForce& f : p.forces) {
    mark(kept->mesh, f.over, region);
    const double m = measure(f.over);
    getfem::add_source_term(
        model, integration,
        "[" + text(f.force[0] / m) + ";" + text(f.force[1] / m) + ";" + text(f.force[2] / m) + "].Test_u", region++);
  }
  for (const Box& b : p.clamped) {
    mark(kept->mesh, b, region);
    getfem::add_Dirichlet_condition_with_simplification(model, "u", region++);
  }
  pin_down(model, p.pins);
  gmm::iteration iteration(1e-9, 0, 5);
  getfem::standard_solve(model, iteration);
  kept->u = std::vector<double>(model.real_variable("u").begin(), model.real_variable("u").end());
  Solution out;
  out.elements = static_cast<int>(kept->mesh.nb_convex());
  out.unknowns = static_cast<int>(kept->fem->nb_dof());
  out.at = [kept](const Point& at) {
    for (std::size_t d = 0; d < kept->fem->nb_dof(); d += 3) {
      const auto node = kept->fem->point_of_basic_dof(d);
      if (std::abs(node[0] - at[0]) + std::abs(node[1] - at[1]) + std::abs(node[2] - at[2]) < near)
        return Point{kept->u[d], kept->u[d + 1], kept->u[d + 2]};
    }
    throw std::runtime_error("no node at the place asked for");
  };
  return out;
}

} // namespace referee
