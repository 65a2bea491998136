/// \file
/// Keys that several kinds of joints share.
#pragma once

#include "io/case/case_builder.h"

#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// Degrees of freedom by their names "x" to "rz".
DofMask mask_of(const std::vector<std::string>& names);

/// Place of a joint: x, or x and y, or at. NaN for omitted coordinates.
GivenPoint joint_place(const CaseBuilder& b, const CaseValues& in);

/// Name, place in the file and what it joins.
void joint_base(const CaseBuilder& b, const CaseValues& in, JointBase& out);

/// Thread name of a size key where it was given as one; empty for a plain diameter.
std::string thread_of(const CaseValues& in, std::string_view key);

/// Property class; one that is unknown at that diameter is reported.
std::string grade_of(const CaseBuilder& b, const CaseValues& in, double diameter);

/// `stiffness` applies, by its unit, to the held translations (`along`) or rotations (`about`); `rotational_stiffness`
/// to the latter.
void joint_stiffness(const CaseBuilder& b, const CaseValues& in, const DofMask& holds, std::optional<double>& along,
                     std::optional<double>& about);

/// A row of screws with the place of each: case_screws.cpp.
void read_joint(const CaseBuilder& b, const CaseValues& in, Screws& out);

} // namespace bedbow
