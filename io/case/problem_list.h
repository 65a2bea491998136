/// \file
/// Collects the problems that all stages of reading find.
#pragma once

#include "mesh/machine/problem.h"

#include <string>
#include <utility>
#include <vector>

namespace bedbow {

class ProblemList {
public:
  void error(SourcePos pos, std::string key, std::string text) {
    all_.push_back({Severity::error, pos, std::move(key), std::move(text)});
  }
  void warning(SourcePos pos, std::string key, std::string text) {
    all_.push_back({Severity::warning, pos, std::move(key), std::move(text)});
  }
  void add(std::vector<Problem> more) {
    for (Problem& p : more) all_.push_back(std::move(p));
  }
  [[nodiscard]] const std::vector<Problem>& all() const { return all_; }
  [[nodiscard]] std::vector<Problem> take() { return std::move(all_); }

private:
  std::vector<Problem> all_;
};

} // namespace bedbow
