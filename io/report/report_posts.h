/// \file
/// The report of `bedbow posts`.
#pragma once

#include "io/answer/posts_out.h"
#include "io/report/report.h"

namespace bedbow {

/// How many posts and where, as a table per count and a plot of bow over spacing, and the machine with the posts of
/// the smallest count that passes. \param goal as for --for. \param machine with the posts that are shown,
/// \param findings of it; they must outlive the report.
Report posts_report(const Case& c, const PostsFound& found, const std::string& goal, const Machine& machine,
                    const Findings& findings, const RunStamp& stamp);

} // namespace bedbow
