#include "tests/verification/record.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>

namespace bedbow::verification {

namespace {
// Tabs separate the columns of the record file, so none may stand in a text.
std::string clean(std::string text) {
  for (char& c : text)
    if (c == '\t' || c == '\n') c = ' ';
  return text;
}
} // namespace

void record(const std::string& id, const std::string& source, const std::string& quantity, double computed,
            double reference, double tolerance, const std::string& unit) {
  const double scale = reference == 0 ? 1 : std::abs(reference);
  const double error = (computed - reference) / scale;
  std::printf("  %-4s %-44s computed %.7g  reference %.7g %s  error %+.2e (allowed %.1e)\n", id.c_str(),
              quantity.c_str(), computed, reference, unit.c_str(), error, tolerance);
  if (const char* file = std::getenv("BEDBOW_VERIFICATION_OUT")) {
    const auto* test = ::testing::UnitTest::GetInstance()->current_test_info();
    char numbers[160];
    std::snprintf(numbers, sizeof numbers, "%.9g\t%.9g\t%s\t%.3e\t%.1e", computed, reference, unit.c_str(), error,
                  tolerance);
    std::ofstream(file, std::ios::app) << (test ? std::string(test->test_suite_name()) + "." + test->name() : "")
                                       << '\t' << id << '\t' << clean(source) << '\t' << clean(quantity) << '\t'
                                       << numbers << '\n';
  }
  EXPECT_LE(std::abs(error), tolerance) << id << " " << quantity << " (" << source << "): computed " << computed
                                        << ", reference " << reference << " " << unit;
  EXPECT_TRUE(std::isfinite(computed)) << quantity;
}

} // namespace bedbow::verification
