// Element formulations from plugins.
#include "io/plugin/plugin_parts.h"
#include "solver/element/parameters.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <span>

namespace bedbow {

namespace {

constexpr std::uint32_t dofs = 6;
constexpr std::size_t most_parameters = 32;
/// Greatest |K - K'| over |K| that still counts as rounding.
constexpr double most_skew = 1e-9;

using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// Axes where none are given: as for the built-in elements.
Eigen::Matrix3d usual_axes(const ElementInput& in, int dimension) {
  if (dimension == 1) return line_axes(in.corners);
  return shell_axes({in.corners.col(0), in.corners.col(1), in.corners.col(2), in.corners.col(3)});
}

/// Input of a plugin's call, and the data it points to.
struct Told {
  RowMajor corners, axes; // nodes x 3; 3 x 3
  bedbow_element_input input;
  Told(const bedbow_element& functions, const ElementInput& in)
      : corners(in.corners.transpose())
      , axes(in.axes.value_or(usual_axes(in, static_cast<int>(functions.dimension))))
      , input{sizeof(bedbow_element_input), functions.nodes, in.parameters.size(), corners.data(), axes.data(),
              in.parameters.data()} {}
};

/// Gets `rows` x `columns` values and checks them. \param call (values, capacity, count, message).
template <class Call>
RowMajor values_of(const std::string& place, const char* what, Eigen::Index rows, Eigen::Index columns, Call&& call) {
  // One row more than expected, so that a small overrun by a plugin does no harm.
  RowMajor out = RowMajor::Zero(rows + 1, columns);
  const auto due = static_cast<std::size_t>(rows * columns);
  std::size_t count = 0;
  PluginMessage message;
  if (call(out.data(), due, &count, message.data()) != 0) throw PluginError(place, message.str());
  if (count != due)
    throw PluginError(place,
                      "claims " + std::to_string(count) + " " + what + " values; expected " + std::to_string(due));
  out.conservativeResize(rows, columns);
  if (!out.allFinite()) throw PluginError(place, std::string("gave a ") + what + " that is not a number");
  return out;
}

template <class Call>
Eigen::MatrixXd symmetric(const bedbow_element& functions, const std::string& place, const char* what, Call&& call) {
  const Eigen::Index n = static_cast<Eigen::Index>(functions.nodes) * dofs;
  Eigen::MatrixXd out = values_of(place, what, n, n, call);
  if ((out - out.transpose()).cwiseAbs().maxCoeff() > most_skew * out.cwiseAbs().maxCoeff())
    throw PluginError(place, std::string("gave a ") + what + " that is not symmetric");
  return out;
}

/// Fills in the plugin's functions.
void bring(const bedbow_element& f, const std::string& place, ElementEntry& e) {
  constexpr std::size_t size = PluginMessage::size();
  e.stiffness = [&f, place](const ElementInput& in) {
    const Told told(f, in);
    return symmetric(f, place, "stiffness", [&](double* to, std::size_t room, std::size_t* count, char* message) {
      return f.stiffness(&told.input, to, room, count, message, size);
    });
  };
  if (f.mass)
    e.mass = [&f, place](const ElementInput& in, bool lumped) {
      const Told told(f, in);
      return symmetric(f, place, "mass", [&](double* to, std::size_t room, std::size_t* count, char* message) {
        return f.mass(&told.input, lumped ? 1 : 0, to, room, count, message, size);
      });
    };
  if (f.geometric)
    e.geometric = [&f, place](const ElementInput& in, std::span<const double> state) {
      const Told told(f, in);
      return symmetric(f, place, "geometric stiffness",
                       [&](double* to, std::size_t room, std::size_t* count, char* message) {
                         return f.geometric(&told.input, state.data(), state.size(), to, room, count, message, size);
                       });
    };
  if (f.loads)
    e.load = [&f, place](const ElementInput& in, std::span<const double> load) -> Eigen::VectorXd {
      const Told told(f, in);
      return values_of(place, "load", static_cast<Eigen::Index>(f.nodes) * dofs, 1,
                       [&](double* to, std::size_t room, std::size_t* count, char* message) {
                         return f.loads(&told.input, load.data(), load.size(), to, room, count, message, size);
                       });
    };
}

std::vector<ElementParameter> parameters_of(const bedbow_element& functions, const PluginEntry& p) {
  if (functions.parameter_count == 0 || functions.parameter_count > most_parameters || functions.parameters == nullptr)
    throw PluginError(p.place, "must request 1 to " + std::to_string(most_parameters) + " parameters");
  const int dimension = static_cast<int>(functions.dimension);
  std::vector<ElementParameter> out;
  for (const bedbow_parameter& q : std::span(functions.parameters, functions.parameter_count)) {
    if (q.name == nullptr || q.unit == nullptr || q.meaning == nullptr || !std::isfinite(q.example))
      throw PluginError(p.place, "each of its parameters needs name, unit, meaning and a finite example");
    const auto known = known_parameters(dimension);
    const auto it =
        std::ranges::find(known, std::string(q.name), [](const KnownParameter& k) { return std::string(k.name); });
    if (it == known.end())
      throw PluginError(p.place,
                        std::string("requests ") + q.name + "; available: " + known_parameter_names(dimension));
    if (std::string(it->unit) != q.unit)
      throw PluginError(p.place, std::string("requests ") + q.name + " in " + q.unit + "; its unit is " + it->unit);
    out.push_back({q.name, q.unit, q.meaning, q.example});
  }
  return out;
}

void check_table(const bedbow_element& f, const PluginEntry& p) {
  p.need(f.stiffness != nullptr, "stiffness");
  if (f.dimension != 1 && f.dimension != 2)
    throw PluginError(p.place, "has dimension " + std::to_string(f.dimension) + "; expected 1 (line) or 2 (surface)");
  const std::uint32_t nodes = f.dimension == 1 ? 2 : 4;
  if (f.nodes != nodes || f.dofs_per_node != dofs)
    throw PluginError(p.place, "has " + std::to_string(f.nodes) + " nodes of " + std::to_string(f.dofs_per_node) +
                                   " dofs; expected " + std::to_string(nodes) + " of 6");
}

} // namespace

void add_plugin_element(const PluginEntry& p, Registries& registries) {
  const auto& functions = p.functions<bedbow_element>();
  check_table(functions, p);
  ElementEntry e;
  e.name = p.entry.name;
  e.description = p.entry.description;
  e.source = p.entry.source;
  e.origin = p.origin;
  e.dimension = static_cast<int>(functions.dimension);
  e.nodes = static_cast<int>(functions.nodes);
  e.parameters = parameters_of(functions, p);
  // The shapes with which the built-in element of this dimension is tested.
  for (const ElementEntry& built_in : registries.elements.entries())
    if (e.examples.empty() && built_in.dimension == e.dimension) e.examples = built_in.examples;
  bring(functions, p.place, e);
  registries.elements.add(std::move(e));
}

} // namespace bedbow
