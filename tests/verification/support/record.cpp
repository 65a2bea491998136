#include "tests/verification/support/record.h"

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

/// Appends a row to the record file, where one is wanted. \param error and \param allowed as text.
void write_row(const std::string& id, const std::string& source, const std::string& quantity, double computed,
               double reference, const std::string& unit, const std::string& error, const std::string& allowed) {
  const char* file = std::getenv("BEDBOW_VERIFICATION_OUT");
  if (!file) return;
  const auto* test = ::testing::UnitTest::GetInstance()->current_test_info();
  char numbers[80];
  std::snprintf(numbers, sizeof numbers, "%.9g\t%.9g", computed, reference);
  std::ofstream(file, std::ios::app) << (test ? std::string(test->test_suite_name()) + "." + test->name() : "") << '\t'
                                     << id << '\t' << clean(source) << '\t' << clean(quantity) << '\t' << numbers
                                     << '\t' << unit << '\t' << error << '\t' << allowed << '\n';
}

std::string digits(const char* format, double value) {
  char text[32];
  std::snprintf(text, sizeof text, format, value);
  return text;
}
} // namespace

void record(const std::string& id, const std::string& source, const std::string& quantity, double computed,
            double reference, double tolerance, const std::string& unit) {
  const double scale = reference == 0 ? 1 : std::abs(reference);
  const double error = (computed - reference) / scale;
  std::printf("  %-4s %-44s computed %.7g  reference %.7g %s  error %+.2e (allowed %.1e)\n", id.c_str(),
              quantity.c_str(), computed, reference, unit.c_str(), error, tolerance);
  write_row(id, source, quantity, computed, reference, unit, digits("%.3e", error), digits("%.1e", tolerance));
  EXPECT_LE(std::abs(error), tolerance) << id << " " << quantity << " (" << source << "): computed " << computed
                                        << ", reference " << reference << " " << unit;
  EXPECT_TRUE(std::isfinite(computed)) << quantity;
}

void record_less(const std::string& id, const std::string& source, const std::string& quantity, double computed,
                 double than, const std::string& unit) {
  std::printf("  %-4s %-44s computed %.7g  less than %.7g %s\n", id.c_str(), quantity.c_str(), computed, than,
              unit.c_str());
  write_row(id, source, quantity, computed, than, unit, "", "less");
  EXPECT_LT(computed, than) << id << " " << quantity << " (" << source << ")";
  EXPECT_TRUE(std::isfinite(computed)) << quantity;
}

} // namespace bedbow::verification
