#include "solver/findings/certificate.h"

#include <array>
#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

struct CheckName {
  double StepChecks::*value;
  const char* words;
};
constexpr std::array check_names{
    CheckName{&StepChecks::equilibrium, "the equilibrium error is %.1e of the greatest force"},
    CheckName{&StepChecks::residual, "the residual of K u = f is %.1e of f"},
    CheckName{&StepChecks::worst_closure, "one-sided joints overlap by %.1e of the deflection"},
    CheckName{&StepChecks::worst_tension, "one-sided joints carry %.1e of the greatest force in the wrong direction"}};

} // namespace

std::string missed_by(const std::vector<StepResult>& steps, double bound) {
  std::string out;
  double worst = bound;
  for (const StepResult& s : steps)
    for (const CheckName& c : check_names) {
      const double value = s.checks.*c.value;
      if (value <= worst) continue;
      worst = value;
      char text[128];
      std::snprintf(text, sizeof text, c.words, value);
      out = "step " + s.name + ": " + text;
      if (std::isnan(value)) return out; // nothing is worse
    }
  return out;
}

void certify(Findings& f) {
  if (std::string missed = missed_by(f.steps, believed); !missed.empty()) {
    f.status = Status::inaccurate;
    f.trouble = std::move(missed) +
                "; very different stiffnesses lose digits: check for springs, sections or sizes that are far too stiff "
                "or too soft";
    return;
  }
  if (std::string missed = missed_by(f.steps, certified); !missed.empty())
    f.warnings.push_back(std::move(missed) + ", more than the 1e-9 expected from rounding (docs/results.md)");
}

} // namespace bedbow
