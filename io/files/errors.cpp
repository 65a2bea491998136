#include "io/files/errors.h"

#include "io/text/text.h"

namespace bedbow {

namespace {

std::string summary(const std::string& file, const std::vector<Problem>& problems) {
  std::string out;
  for (const Problem& p : problems) out += (out.empty() ? "" : "\n") + to_string(p, file);
  return out;
}

} // namespace

CaseError::CaseError(std::string file, std::vector<Problem> problems)
    : std::runtime_error(summary(file, problems))
    , file_(std::move(file))
    , problems_(std::move(problems)) {}

std::string to_string(const Problem& problem, const std::string& file) {
  std::string out = printable(file);
  if (problem.pos.line > 0) {
    out += ":" + std::to_string(problem.pos.line);
    if (problem.pos.column > 0) out += ":" + std::to_string(problem.pos.column);
  }
  out += problem.severity == Severity::error ? ": error: " : ": warning: ";
  if (!problem.key.empty()) out += printable(problem.key) + ": ";
  return out + printable(problem.text);
}

} // namespace bedbow
