#include "tests/reference/pressed.h"

#include <Eigen/CholmodSupport>
#include <Eigen/Sparse>
#include <getfem/getfem_assembling.h>
#include <getfem/getfem_mesh_fem.h>
#include <getfem/getfem_mesh_im.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace referee {

namespace {

constexpr double near = 1e-6;

bool within(const Box& box, const bgeot::base_node& p) {
  for (std::size_t k = 0; k < p.size(); ++k)
    if (p[k] < box.lower[k] - near || p[k] > box.upper[k] + near) return false;
  return true;
}

bool solid_at(const std::vector<Box>& boxes, const bgeot::base_node& p) {
  return std::any_of(boxes.begin(), boxes.end(), [&p](const Box& b) { return within(b, p); });
}

void fill(getfem::mesh& mesh, const Body::Shape& shape) {
  const std::size_t dim = shape.lines.size();
  std::vector<std::size_t> cell(dim, 1);
  while (cell[dim - 1] < shape.lines[dim - 1].size()) {
    bgeot::base_node middle(dim);
    for (std::size_t k = 0; k < dim; ++k) middle[k] = (shape.lines[k][cell[k] - 1] + shape.lines[k][cell[k]]) / 2;
    if (solid_at(shape.solid, middle)) {
      std::vector<bgeot::base_node> corners;
      for (std::size_t c = 0; c < (1U << dim); ++c) {
        bgeot::base_node corner(dim);
        for (std::size_t k = 0; k < dim; ++k) corner[k] = shape.lines[k][cell[k] - 1 + (c >> k & 1)];
        corners.push_back(corner);
      }
      mesh.add_convex_by_points(bgeot::parallelepiped_geotrans(dim, 1), corners.begin());
    }
    for (std::size_t k = 0; k < dim && ++cell[k] == shape.lines[k].size() && k + 1 < dim; ++k) cell[k] = 1;
  }
}

/// Quadratic shape function on [lower, upper] that is 1 at the node, one of the two ends or the middle.
double quadratic(double node, double lower, double upper, double x) {
  const double s = 2 * (x - lower) / (upper - lower) - 1, n = 2 * (node - lower) / (upper - lower) - 1;
  return std::abs(n) < 0.5 ? 1 - s * s : s * (s + n) / 2;
}

} // namespace

Line graded(const Line& marks, double focus, double least, double growth, double most) {
  // Places grown from the focus in both directions; then each run between marks takes as many equal or graded parts.
  Line out;
  const auto size_at = [&](double x) { return std::min(most, least + (growth - 1) * std::abs(x - focus)); };
  for (std::size_t i = 1; i < marks.size(); ++i) {
    // Number of elements: integral of 1/size; edges at equal shares of it.
    constexpr int fine = 2000;
    const double from = marks[i - 1], run = marks[i] - from;
    std::vector<double> sum{0};
    for (int k = 0; k < fine; ++k) sum.push_back(sum.back() + run / fine / size_at(from + run * (k + 0.5) / fine));
    const int n = std::max(1, static_cast<int>(std::ceil(sum.back() - 0.1)));
    for (int part = 0; part < n; ++part) {
      const double wanted = sum.back() * part / n;
      const auto k = std::upper_bound(sum.begin(), sum.end(), wanted) - sum.begin() - 1;
      const double t = (wanted - sum[k]) / (sum[k + 1] - sum[k]);
      out.push_back(from + run * (static_cast<double>(k) + t) / fine);
    }
  }
  out.push_back(marks.back());
  return out;
}

struct Body::Kept {
  int dim = 3;
  getfem::mesh mesh;
  std::unique_ptr<getfem::mesh_fem> fem;
  getfem::mesh_region outer;
  std::vector<int> free; ///< number among the free unknowns, or -1
  int free_count = 0;
  Eigen::CholmodSupernodalLLT<Eigen::SparseMatrix<double>, Eigen::Lower> factor;

  bool face_within(const Box& box, const getfem::mr_visitor& f) const {
    const auto points = mesh.points_of_face_of_convex(f.cv(), f.f());
    return std::all_of(points.begin(), points.end(), [&box](const bgeot::base_node& p) { return within(box, p); });
  }
  std::vector<std::size_t> face_unknowns(const getfem::mr_visitor& f) const {
    const auto dofs = fem->ind_basic_dof_of_face_of_element(f.cv(), f.f());
    return {dofs.begin(), dofs.end()};
  }
  void hold(const Shape& shape, const Body& body);
  void factorize(const Shape& shape);
};

void Body::Kept::hold(const Shape& shape, const Body& body) {
  free.assign(fem->nb_dof(), 0);
  for (const Box& box : shape.sliding)
    for (getfem::mr_visitor f(outer); !f.finished(); ++f) {
      if (!face_within(box, f)) continue;
      for (const std::size_t d : face_unknowns(f))
        for (int k = 0; k < dim; ++k)
          if (box.upper[k] - box.lower[k] < near && static_cast<int>(d) % dim == k) free[d] = -1;
    }
  for (const Pin& pin : shape.pins)
    for (int k = 0; k < dim; ++k)
      if (pin.directions[k]) free[body.unknown(pin.at, k)] = -1;
  for (int& f : free)
    if (f == 0) f = free_count++;
}

void Body::Kept::factorize(const Shape& shape) {
  getfem::mesh_im integration(mesh);
  integration.set_integration_method(
      getfem::int_method_descriptor("IM_GAUSS_PARALLELEPIPED(" + std::to_string(dim) + ",5)"));
  Eigen::SparseMatrix<double> K(free_count, free_count);
  {
    getfem::model_real_sparse_matrix full(fem->nb_dof(), fem->nb_dof());
    const std::vector<double> lambda{shape.E * shape.nu / ((1 + shape.nu) * (1 - 2 * shape.nu))};
    const std::vector<double> mu{shape.E / (2 * (1 + shape.nu))};
    getfem::asm_stiffness_matrix_for_homogeneous_linear_elasticity(full, integration, *fem, lambda, mu);
    Eigen::VectorXi count = Eigen::VectorXi::Zero(free_count);
    const auto each = [&](auto&& take) {
      for (std::size_t c = 0; c < fem->nb_dof(); ++c) {
        if (free[c] < 0) continue;
        const auto column = gmm::mat_const_col(full, c);
        for (auto it = gmm::vect_const_begin(column); it != gmm::vect_const_end(column); ++it)
          if (free[it.index()] >= free[c]) take(free[it.index()], free[c], *it);
      }
    };
    each([&](int, int column, double) { ++count[column]; });
    K.reserve(count);
    each([&](int row, int column, double v) { K.insert(row, column) = v; });
  }
  K.makeCompressed();
  factor.compute(K);
  if (factor.info() != Eigen::Success) throw std::runtime_error("the body is not held");
}

Body::Body(const Shape& shape)
    : kept_(std::make_unique<Kept>()) {
  kept_->dim = static_cast<int>(shape.lines.size());
  fill(kept_->mesh, shape);
  kept_->fem = std::make_unique<getfem::mesh_fem>(kept_->mesh, kept_->dim);
  kept_->fem->set_finite_element(getfem::fem_descriptor("FEM_QK(" + std::to_string(kept_->dim) + ",2)"));
  getfem::outer_faces_of_mesh(kept_->mesh, kept_->outer);
  kept_->hold(shape, *this);
  kept_->factorize(shape);
}

Body::~Body() = default;

int Body::elements() const {
  return static_cast<int>(kept_->mesh.nb_convex());
}

int Body::unknowns() const {
  return static_cast<int>(kept_->fem->nb_dof());
}

std::vector<FacePoint> Body::face(const Box& patch) const {
  const int dim = kept_->dim;
  const std::array<double, 3> gauss{-std::sqrt(0.6), 0, std::sqrt(0.6)}, weight{5. / 18, 8. / 18, 5. / 18};
  std::vector<FacePoint> out;
  for (getfem::mr_visitor f(kept_->outer); !f.finished(); ++f) {
    if (!kept_->face_within(patch, f)) continue;
    Box box{{1e300, 1e300, 1e300}, {-1e300, -1e300, -1e300}};
    for (const auto& p : kept_->mesh.points_of_face_of_convex(f.cv(), f.f()))
      for (int k = 0; k < dim; ++k) {
        box.lower[k] = std::min(box.lower[k], p[k]);
        box.upper[k] = std::max(box.upper[k], p[k]);
      }
    const auto dofs = kept_->face_unknowns(f);
    const int points = dim == 3 ? 9 : 3;
    for (int g = 0; g < points; ++g) {
      FacePoint point{{0, 0, 0}, 1, {}};
      point.at[dim - 1] = box.lower[dim - 1];
      for (int k = 0; k + 1 < dim; ++k) {
        const int i = k == 0 ? g % 3 : g / 3;
        const double run = box.upper[k] - box.lower[k];
        point.at[k] = box.lower[k] + run * (1 + gauss[i]) / 2;
        point.area *= run * weight[i];
      }
      for (const std::size_t d : dofs) {
        if (static_cast<int>(d) % dim != dim - 1) continue;
        const auto node = kept_->fem->point_of_basic_dof(d);
        double value = 1;
        for (int k = 0; k + 1 < dim; ++k) value *= quadratic(node[k], box.lower[k], box.upper[k], point.at[k]);
        point.heights.emplace_back(static_cast<int>(d), value);
      }
      out.push_back(point);
    }
  }
  if (out.empty()) throw std::runtime_error("no face in the patch");
  return out;
}

Eigen::VectorXd Body::unit(const Box& patch) const {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(unknowns());
  double area = 0;
  for (const FacePoint& p : face(patch)) {
    area += p.area;
    for (const auto& [d, value] : p.heights) out[d] += p.area * value;
  }
  return out / area;
}

int Body::unknown(const Point& at, int direction) const {
  for (std::size_t d = 0; d < kept_->fem->nb_dof(); d += kept_->dim) {
    const auto node = kept_->fem->point_of_basic_dof(d);
    double off = 0;
    for (int k = 0; k < kept_->dim; ++k) off += std::abs(node[k] - at[k]);
    if (off < near) return static_cast<int>(d) + direction;
  }
  throw std::runtime_error("no node at the place asked for");
}

Point Body::place(int unknown) const {
  const auto node = kept_->fem->point_of_basic_dof(unknown);
  Point out{0, 0, 0};
  for (int k = 0; k < kept_->dim; ++k) out[k] = node[k];
  return out;
}

Eigen::MatrixXd Body::solve(const Eigen::MatrixXd& loads) const {
  Eigen::MatrixXd f(kept_->free_count, loads.cols());
  for (int d = 0; d < unknowns(); ++d)
    if (kept_->free[d] >= 0) f.row(kept_->free[d]) = loads.row(d);
  const Eigen::MatrixXd x = kept_->factor.solve(f);
  Eigen::MatrixXd u = Eigen::MatrixXd::Zero(unknowns(), loads.cols());
  for (int d = 0; d < unknowns(); ++d)
    if (kept_->free[d] >= 0) u.row(d) = x.row(kept_->free[d]);
  return u;
}

namespace {

/// Movements of the whole body that the pins hold for the time being: up, and a turn of 1 about x.
Eigen::MatrixXd rigid_movements(const Body& body, int dim) {
  Eigen::MatrixXd out = Eigen::MatrixXd::Zero(body.unknowns(), 2);
  for (int d = 0; d < body.unknowns(); d += dim) {
    const Point at = body.place(d);
    out(d + dim - 1, 0) = 1;
    out(d + dim - 1, 1) = at[dim - 2];
    out(d + dim - 2, 1) = -at[dim - 1];
  }
  return out;
}

/// The compliance of the land's nodes, of the cam and of the load, in this order.
struct Condensed {
  std::vector<int> nodes;   ///< unknowns
  std::map<int, int> index; ///< of an unknown among the nodes
  Eigen::MatrixXd C;        ///< heights of nodes and cam by unit forces at nodes and cam, and by the load (last column)
  Eigen::MatrixXd R;        ///< heights of nodes and cam by rigid movements
  Eigen::Vector2d load;     ///< work of the load on rigid movements
};

Condensed condense(const Body& body, const std::vector<FacePoint>& land, const Eigen::VectorXd& cam,
                   const Eigen::VectorXd& load, const Eigen::MatrixXd& rigid) {
  Condensed out;
  for (const FacePoint& p : land)
    for (const auto& [d, value] : p.heights) out.index.try_emplace(d, 0);
  for (auto& [d, i] : out.index) {
    i = static_cast<int>(out.nodes.size());
    out.nodes.push_back(d);
  }
  const int n = static_cast<int>(out.nodes.size()), all = n + 2;
  out.C.resize(n + 1, all);
  constexpr int most = 64;
  for (int from = 0; from < all; from += most) {
    const int count = std::min(most, all - from);
    Eigen::MatrixXd loads = Eigen::MatrixXd::Zero(body.unknowns(), count);
    for (int c = 0; c < count; ++c) {
      if (from + c < n)
        loads(out.nodes[from + c], c) = 1;
      else
        loads.col(c) = from + c == n ? cam : load;
    }
    const Eigen::MatrixXd u = body.solve(loads);
    for (int i = 0; i < n; ++i) out.C.row(i).segment(from, count) = u.row(out.nodes[i]);
    out.C.row(n).segment(from, count) = cam.transpose() * u;
  }
  out.R.resize(n + 1, 2);
  for (int i = 0; i < n; ++i) out.R.row(i) = rigid.row(out.nodes[i]);
  out.R.row(n) = cam.transpose() * rigid;
  out.load = rigid.transpose() * load;
  return out;
}

/// Heights of the land's nodes, the cam's force and the rigid movements for a set of pressed points.
Eigen::VectorXd settle(const Condensed& c, const std::vector<FacePoint>& land, const std::vector<bool>& pressed,
                       double bed) {
  const int n = static_cast<int>(c.nodes.size());
  std::vector<Eigen::Triplet<double>> entries;
  for (std::size_t g = 0; g < land.size(); ++g) {
    if (!pressed[g]) continue;
    for (const auto& [a, va] : land[g].heights)
      for (const auto& [b, vb] : land[g].heights)
        entries.emplace_back(c.index.at(a), c.index.at(b), bed * land[g].area * va * vb);
  }
  Eigen::SparseMatrix<double> P(n, n);
  P.setFromTriplets(entries.begin(), entries.end());
  // Columns: heights, cam, rigid movements. Rows: heights of the nodes, height of the cam, balance.
  Eigen::MatrixXd A = Eigen::MatrixXd::Zero(n + 3, n + 3);
  Eigen::VectorXd b(n + 3);
  A.topLeftCorner(n + 1, n) = c.C.leftCols(n) * P;
  A.topLeftCorner(n, n).diagonal().array() += 1;
  A.block(0, n, n + 1, 1) = -c.C.col(n);
  A.block(0, n + 1, n + 1, 2) = -c.R;
  A.block(n + 1, 0, 2, n) = -c.R.topRows(n).transpose() * P;
  A.block(n + 1, n, 2, 1) = c.R.row(n).transpose();
  b << c.C.col(n + 1), -c.load;
  return A.partialPivLu().solve(b);
}

} // namespace

std::vector<Pressed> press(const Body& body, const Pressing& p) {
  const auto land = body.face(p.land);
  const int dim = body.place(1) == body.place(2) ? 3 : 2;
  const Eigen::MatrixXd rigid = rigid_movements(body, dim);
  const Eigen::VectorXd cam = body.unit(p.cam);
  const Condensed c = condense(body, land, cam, p.load, rigid);
  const int n = static_cast<int>(c.nodes.size());
  std::vector<Pressed> all;
  for (const double bed : p.beds) {
    std::vector<bool> pressed(land.size(), true);
    Pressed out;
    Eigen::VectorXd x;
    std::vector<double> height(land.size());
    for (bool stands = false; !stands;) {
      if (++out.rounds > 100) throw std::runtime_error("the pressed points do not settle");
      x = settle(c, land, pressed, bed);
      stands = true;
      for (std::size_t g = 0; g < land.size(); ++g) {
        height[g] = 0;
        for (const auto& [d, value] : land[g].heights) height[g] += value * x[c.index.at(d)];
        if (pressed[g] != (height[g] < 0)) stands = false;
        pressed[g] = height[g] < 0;
      }
    }
    out.cam = x[n];
    Eigen::VectorXd forces = p.load + out.cam * cam;
    for (std::size_t g = 0; g < land.size(); ++g) {
      const double force = pressed[g] ? -bed * land[g].area * height[g] : 0;
      out.bed.push_back({land[g].at, force});
      for (const auto& [d, value] : land[g].heights) forces[d] += force * value;
    }
    out.u = body.solve(forces) + rigid * x.tail<2>();
    all.push_back(std::move(out));
  }
  return all;
}

Pressed balance(const Body& body, const Box& cam, const Eigen::VectorXd& load, const Box& still) {
  const int dim = body.place(1) == body.place(2) ? 3 : 2;
  const Eigen::MatrixXd rigid = rigid_movements(body, dim);
  Eigen::MatrixXd held(body.unknowns(), 2);
  held << body.unit(cam), body.unit(still);
  Pressed out;
  out.cam = -rigid.col(0).dot(load) / rigid.col(0).dot(held.col(0));
  const Eigen::VectorXd forces = load + out.cam * held.col(0);
  const Eigen::VectorXd u = body.solve(forces);
  const Eigen::Matrix2d A = held.transpose() * rigid;
  out.u = u - rigid * A.partialPivLu().solve(held.transpose() * u);
  return out;
}

} // namespace referee
