/// \file
/// From checked values to a Case, part by part. Only the reader uses this.
#pragma once

#include "io/case/case_reader.h"
#include "io/case/case_values.h"

#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// State shared by all parts of the case builder.
struct CaseBuilder {
  const CaseValues& root;
  const Registries& registries;
  ProblemList& problems;
  Case& out;

  [[nodiscard]] Machine& machine() const { return out.machine; }
  /// Reports a key's value as wrong.
  void wrong(const CaseValues& in, std::string_view key, std::string text) const {
    problems.error(in.pos(key), in.path(key), std::move(text));
  }
  /// Reports a missing key of a table.
  void missing(const CaseValues& in, std::string_view key, const std::string& why) const {
    problems.error(in.pos(), in.path(key), "missing key \"" + std::string(key) + "\" in " + in.heading() + ": " + why);
  }
  void assume(const std::string& what) const { out.assumptions.push_back(what); }
};

// case_materials.cpp
/// Index into Machine::materials of the material that a key names: one of the case, else a built-in one. -1 where the
/// key is missing or wrong; an unknown name is reported.
int material_of(const CaseBuilder& b, const CaseValues& in, std::string_view key = "material");
/// The same by its name; -1 for an unknown name, which is not reported.
int material_named(const CaseBuilder& b, const std::string& name);
/// Names of the case's and the built-in materials.
std::vector<std::string> material_names(const CaseBuilder& b);
/// Checks materials of the case that nothing uses: they may still be wrong.
void check_unused_materials(const CaseBuilder& b);

// case_shapes.cpp
/// Shape and sizes of a bar or member. Reports sizes that are missing, unused or invalid for the shape.
Shape shape_of(const CaseBuilder& b, const CaseValues& in, double nu);

// case_element.cpp
/// Name of the element formulation under `element`; empty where the key is missing or wrong, which is reported.
/// \param dimension 1: along a line, 2: over a surface.
std::string element_of(const CaseBuilder& b, const CaseValues& in, int dimension);

// case_refs.cpp
/// What a text such as "bed.web", "ground" or "cheek" refers to; kind `none` where it refers to nothing, reported.
Ref ref_of(const CaseBuilder& b, const std::string& text, SourcePos pos, const std::string& path);
/// The same for a key of kind ref; `none` where the key is missing or wrong.
Ref ref_of(const CaseBuilder& b, const CaseValues& in, std::string_view key);
/// Index of a body's bar by its name, "spine" or "clamp.spine"; -1 where there is none, which is reported.
int bar_of(const CaseBuilder& b, BodyKind body, const CaseValues& in, std::string_view key);

// The parts, in order of dependence.
void build_bodies(const CaseBuilder& b);    // case_bodies.cpp
void build_nose(const CaseBuilder& b);      // case_nose.cpp: edge, face, nose, fingers
void build_sheet(const CaseBuilder& b);     // case_sheet.cpp
void build_structure(const CaseBuilder& b); // case_structure.cpp: members, panels
void build_mesh(const CaseBuilder& b);      // case_mesh.cpp
void build_joints(const CaseBuilder& b);    // case_joints.cpp
void build_loads(const CaseBuilder& b);     // case_loads.cpp: holds, loads, dials
void build_settings(const CaseBuilder& b);  // case_settings.cpp: limits, solve, output, plugins
void build_studies(const CaseBuilder& b);   // case_studies.cpp: sweep, stock, fit

} // namespace bedbow
