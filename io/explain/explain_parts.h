/// \file
/// Parts of explain(). Only it uses this.
#pragma once

#include "io/case/case_reader.h"
#include "io/text/style.h"

#include <initializer_list>
#include <string>

namespace bedbow {

/// Formats values of a case for printing.
class CaseFormatter {
public:
  explicit CaseFormatter(const Case& c)
      : case_(c) {}
  /// Number alone, in the case's unit of length, without trailing zeros; "-" where it is omitted.
  [[nodiscard]] std::string number(double length) const;
  /// With its unit.
  [[nodiscard]] std::string length(double value) const;
  [[nodiscard]] std::string force(double value) const;
  /// Stiffness in the case's units of force and length.
  [[nodiscard]] std::string stiffness(double value) const;
  [[nodiscard]] static std::string degrees(double angle);
  /// "8, -52": numbers with commas, omitted ones as "-".
  [[nodiscard]] std::string place(std::initializer_list<double> lengths) const;
  /// Sizes of a shape: "16 x 80", "40 x 40 x 3", "dia 20".
  [[nodiscard]] std::string sizes(const Shape& shape) const;
  [[nodiscard]] const std::string& unit() const { return case_.output.length.name; }
  [[nodiscard]] const Case& what() const { return case_; }
  [[nodiscard]] const Machine& machine() const { return case_.machine; }
  /// Name of the material of that index.
  [[nodiscard]] std::string material(int index) const;

private:
  const Case& case_;
};

std::string explain_bodies(const CaseFormatter& t, const Style& style);    // explain_bodies.cpp
std::string explain_sheet(const CaseFormatter& t, const Style& style);     // explain_bodies.cpp
std::string explain_joints(const CaseFormatter& t, const Style& style);    // explain_joints.cpp
std::string explain_structure(const CaseFormatter& t, const Style& style); // explain_structure.cpp

} // namespace bedbow
