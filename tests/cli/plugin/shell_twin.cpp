// A plugin whose surface element is the built-in one by another name, handed across the C interface: a machine of it
// has to come out as one of the built-in element does.
#include "io/plugin/bedbow_plugin.h"
#include "solver/element/element_entry.h"

#include <algorithm>
#include <cstdio>
#include <span>

namespace {

using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

const bedbow::ElementEntry& shell() {
  static const bedbow::Registry<bedbow::ElementEntry> all = [] {
    bedbow::Registry<bedbow::ElementEntry> registry{"element"};
    bedbow::builtin_elements(registry);
    return registry;
  }();
  return all.get("shell4");
}

bedbow::ElementInput input(const bedbow_element_input& in) {
  return {Eigen::Map<const Eigen::Matrix3Xd>(in.corners, 3, 4),
          {in.parameters, in.parameters + in.parameter_count},
          Eigen::Map<const Eigen::Matrix<double, 3, 3, Eigen::RowMajor>>(in.axes)};
}

/// No exception may leave a plugin.
template <class Call>
int hand_over(double* to, size_t capacity, size_t* count, char* message, size_t message_size, Call&& call) {
  try {
    const RowMajor values = call();
    *count = static_cast<size_t>(values.size());
    if (*count > capacity) throw std::length_error("no room");
    std::copy_n(values.data(), values.size(), to);
    return 0;
  } catch (const std::exception& e) {
    std::snprintf(message, message_size, "%s", e.what());
    return 1;
  }
}

int stiffness(const bedbow_element_input* in, double* to, size_t capacity, size_t* count, char* message, size_t size) {
  return hand_over(to, capacity, count, message, size, [&] { return shell().stiffness(input(*in)); });
}
int mass(const bedbow_element_input* in, int lumped, double* to, size_t capacity, size_t* count, char* message,
         size_t size) {
  return hand_over(to, capacity, count, message, size, [&] { return shell().mass(input(*in), lumped != 0); });
}
int geometric(const bedbow_element_input* in, const double* state, size_t states, double* to, size_t capacity,
              size_t* count, char* message, size_t size) {
  return hand_over(to, capacity, count, message, size,
                   [&] { return shell().geometric(input(*in), std::span(state, states)); });
}
int loads(const bedbow_element_input* in, const double* load, size_t values, double* to, size_t capacity, size_t* count,
          char* message, size_t size) {
  return hand_over(to, capacity, count, message, size,
                   [&] { return shell().load(input(*in), std::span(load, values)); });
}

const bedbow_parameter wanted[] = {{"E", "Pa", "Young's modulus", 210e9},
                                   {"nu", "-", "Poisson's ratio", 0.3},
                                   {"density", "kg/m^3", "mass per volume", 7850},
                                   {"thickness", "m", "plate thickness", 0.012}};
const bedbow_element element = {sizeof element, 2, 4, 6, 4, wanted, stiffness, mass, geometric, loads};
const bedbow_entry entry = {BEDBOW_PLUGIN_INTERFACE,
                            sizeof entry,
                            "element",
                            "shell twin",
                            "1.0",
                            "the built-in shell by another name",
                            "own",
                            &element};

} // namespace

extern "C" __attribute__((visibility("default"))) const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : nullptr;
}
