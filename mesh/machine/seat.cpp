#include "mesh/machine/seat.h"

#include "mesh/piece/fastener.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

constexpr double whole_width = std::numeric_limits<double>::infinity();

double known(double size) {
  return std::isfinite(size) ? size : 0;
}

BarSeat seat_on(const BarBox& box, BarModel model, const Contact& contact, double arm) {
  if (model == BarModel::beam) return {}; // its section is rigid, and along x it needs no patch
  const Eigen::Vector2d side = box.upper - box.lower;
  const double thickness = side.minCoeff(), width = side.maxCoeff();
  if (arm > 0) return {width, width, arm};
  return {contact.section ? 0 : contact.along + thickness, std::min(contact.across + thickness, width)};
}

} // namespace

std::pair<Eigen::Vector3d, Eigen::Vector3d> seat_directions(const Eigen::Vector3d& normal) {
  const Eigen::Vector3d n = normal.normalized();
  Eigen::Vector3d along = Eigen::Vector3d::UnitX() - n.x() * n;
  if (along.norm() < 0.1) along = Eigen::Vector3d::UnitY() - n.y() * n;
  along.normalize();
  return {along, n.cross(along)};
}

Contact contact_of(const JointBase& /*joint*/) {
  return {};
}

Contact contact_of(const Post& p) {
  const double washer = std::isfinite(p.washer_diameter) || p.diameter <= 0
                            ? known(p.washer_diameter)
                            : hardware(thread_of_size(p.thread, p.diameter)).washer_diameter;
  return {washer, washer};
}

Contact contact_of(const Cam& c) {
  return {known(c.width), 0};
}

Contact contact_of(const Hinge& h) {
  return {known(h.bearing_length), known(h.pin)};
}

Contact contact_of(const Handle& /*handle*/) {
  return {0, whole_width};
}

Contact contact_of(const Screws& s) {
  const double head = s.diameter > 0 ? hardware(thread_of_size(s.thread, s.diameter)).socket_head : 0;
  return {head, head};
}

Contact contact_of(const Support& /*support*/) {
  return {0, whole_width, true};
}

double arm_beside(const BarBox& box, const Eigen::Vector3d& at, bool along_z) {
  const double beside =
      along_z ? std::max({box.lower.x() - at.y(), at.y() - box.upper.x(), 0.0}) : box.distance({at.y(), at.z()});
  return beside > (box.upper - box.lower).minCoeff() / 2 ? beside : 0;
}

std::array<BarSeat, 2> bar_seats(const Machine& machine, const JointBase& joint, const Contact& contact, bool along_z,
                                 const SideBoxes& boxes, const Eigen::Vector3d& at) {
  std::array<BarSeat, 2> out;
  for (std::size_t i = 0; i < 2; ++i)
    if (boxes[i])
      out[i] = seat_on(*boxes[i], machine.bar(joint.joins[i]).model, contact, arm_beside(*boxes[i], at, along_z));
  if (!joint.seat.allFinite()) return out;
  std::array<double, 2> arm{};
  for (std::size_t i = 0; i < 2; ++i)
    if (boxes[i]) arm[i] = arm_beside(*boxes[i], at, along_z);
  const bool any_arm = arm[0] > 0 || arm[1] > 0;
  for (std::size_t i = 0; i < 2; ++i)
    if (boxes[i] && (arm[i] > 0 || !any_arm)) out[i] = {joint.seat.x(), joint.seat.y(), arm[i], true};
  return out;
}

bool acts_along_z(JointKind kind) {
  return kind == JointKind::post || kind == JointKind::cam;
}

} // namespace bedbow
