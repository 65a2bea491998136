// The same machine told another way is the same machine. On 340 random machines an independent solver agreed with this
// program within 1 %; but mirrored, 29 of 63 machines with joints closer than 4 mm gave other answers, and two changed
// when their case was written in inches, because pads were thinned from the left and places compared to the last bit.
// So 200 machines drawn at random, with such joints among them, are solved as drawn and told in five other ways.
#include "tests/verification/machine/random_machine.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <map>

namespace bedbow::verification {
namespace {

/// Seeds 1 to 200, fixed before any of what they found was repaired; without BEDBOW_LONG in the environment every
/// fifth.
constexpr std::uint64_t machines = 200;
constexpr double same = 1e-6; ///< of the greatest of its kind in the machine

/// What a machine answers, by kind, each number under a name that every way of telling it keeps.
using Answers = std::map<std::string, std::map<std::string, double>>;

/// How the other way of telling changes numbers: lengths, forces, and the direction of x.
struct Change {
  double length = 1, force = 1, x = 1;
};

double nose_force(const StepResult& s) {
  double sum = 0;
  for (const ContactResult& c : s.contacts)
    if (c.what == "nose")
      for (const double f : c.force) sum += f;
  for (const JointResult& j : joints_of(s, JointKind::touch)) sum += j.value; // beyond the sheet
  return sum;
}

Answers answers_of(const Findings& f, const Change& to = {}) {
  Answers out;
  for (const StepResult& s : f.steps) {
    for (const BodyKind k : all_bodies)
      out["bow"][s.name + " " + to_string(k)] = s.bow.bow[static_cast<std::size_t>(k)] / to.length;
    out["angle"][s.name + " mean"] = s.bow.angle_mean;
    out["angle"][s.name + " spread"] = s.bow.angle_spread;
    for (const JointKind kind : {JointKind::post, JointKind::cam, JointKind::hinge})
      for (const JointResult& j : joints_of(s, kind)) out["joint force"][s.name + " " + j.name] = j.value / to.force;
    out["joint force"][s.name + " nose"] = nose_force(s) / to.force;
    for (const DialResult& d : s.dials) {
      out["dial"][s.name + " " + d.name + " x"] = d.movement.x() / to.length * to.x;
      out["dial"][s.name + " " + d.name + " y"] = d.movement.y() / to.length;
      out["dial"][s.name + " " + d.name + " z"] = d.movement.z() / to.length;
    }
    for (const BarResult& b : s.bars) out["stress"][s.name + " " + b.name] = b.stress;
    // Nuts and stress areas come from tables of threads: a stud twice as thick has neither twice as large.
    for (const JointKind kind : {JointKind::post, JointKind::cam, JointKind::hinge})
      for (const JointResult& j : joints_of(s, kind))
        if (to.length == 1) out["use"][s.name + " " + j.name] = j.utilisation;
    out["opening"][s.name] = std::ranges::max(s.bend_line.nose_opening) / to.length;
    out["reserve"][s.name] = std::ranges::max(s.bend_line.clamp_reserve) / to.force * to.length;
  }
  return out;
}

/// The farthest miss over the greatest number of its kind, and where.
struct Miss {
  double ratio = 0;
  std::string where;
};

Miss farthest(const Answers& as_drawn, const Answers& retold) {
  Miss worst;
  for (const auto& [kind, numbers] : as_drawn) {
    if (!retold.contains(kind)) continue;
    double greatest = 0;
    for (const auto& [name, value] : numbers)
      if (std::isfinite(value)) greatest = std::max(greatest, std::abs(value));
    for (const auto& [name, value] : numbers) {
      const double other = retold.at(kind).at(name);
      if (!std::isfinite(value) && !std::isfinite(other)) continue;
      const double ratio = greatest > 0 ? std::abs(other - value) / greatest : std::abs(other);
      if (!(ratio <= worst.ratio)) worst = {ratio, kind + ", " + name};
    }
  }
  return worst;
}

/// Joints, bars and studies, fields left out where nothing reads them: what the machine answers as a user's file would.
Findings told(const std::string& text) {
  AnalysisOptions options;
  options.certificate = false;
  const Findings f = analyse(machine_of(text), builtin_registries(), options);
  if (f.status != Status::ok) throw std::runtime_error(f.trouble);
  return f;
}

/// With sections that stay plane.
RandomMachine with_beams(RandomMachine m) {
  for (CaseTable& t : m.tables)
    if (t.heading.ends_with(".bar]]") && !t.find("model")) t.text("model", "beam");
  return m;
}

using Machines = std::function<RandomMachine(std::uint64_t seed)>;
using Retold = std::function<std::string(const RandomMachine&, std::uint64_t seed)>;

void expect_same(const Retold& retold, const Change& change = {}, const Machines& drawn = random_machine) {
  int failed = 0, close_failed = 0, close = 0;
  double worst = 0;
  const std::uint64_t every = std::getenv("BEDBOW_LONG") ? 1 : 5;
  for (std::uint64_t seed = 1; seed <= machines; seed += every) {
    const RandomMachine m = drawn(seed);
    close += m.close;
    try {
      const Miss miss = farthest(answers_of(told(case_text(m.tables))), answers_of(told(retold(m, seed)), change));
      worst = std::max(worst, miss.ratio);
      if (miss.ratio <= same) continue;
      ADD_FAILURE() << "machine " << seed << " (" << m.what << "): off by " << miss.ratio << " in " << miss.where;
    } catch (const std::exception& e) {
      ADD_FAILURE() << "machine " << seed << " (" << m.what << "): " << e.what();
    }
    ++failed;
    close_failed += m.close;
  }
  std::printf("%d of %d machines differ, %d of the %d with joints closer than 4 mm; farthest %.2g\n", failed,
              static_cast<int>(machines / every), close_failed, close, worst);
}

/// The same for machines of beams, with BEDBOW_LONG in the environment.
void expect_same_beams(const Retold& retold, const Change& change = {}) {
  if (!std::getenv("BEDBOW_LONG")) GTEST_SKIP() << "BEDBOW_LONG=1 runs it";
  expect_same(retold, change, [](std::uint64_t seed) { return with_beams(random_machine(seed)); });
}

TEST(SameMachine, Mirrored) {
  expect_same([](const RandomMachine& m, std::uint64_t) { return case_text(mirrored(m.tables, m.length)); },
              {1, 1, -1});
}

TEST(SameMachine, WrittenInInches) {
  expect_same([](const RandomMachine& m, std::uint64_t) { return case_text(m.tables, LengthUnit::inch); });
}

TEST(SameMachine, ListsShuffled) {
  expect_same([](const RandomMachine& m, std::uint64_t seed) { return case_text(shuffled(m.tables, seed)); });
}

TEST(SameMachine, JoinsReversed) {
  expect_same([](const RandomMachine& m, std::uint64_t) { return case_text(joins_reversed(m.tables)); });
}

TEST(SameMachine, TwiceAsLarge) {
  expect_same([](const RandomMachine& m, std::uint64_t) { return case_text(doubled(m.tables)); }, {2, 4, 1});
}

// Flats that bend across their width carry more unknowns than a beam, each with a sense of its own along x and y.
TEST(SameMachineOfBeams, Mirrored) {
  expect_same_beams([](const RandomMachine& m, std::uint64_t) { return case_text(mirrored(m.tables, m.length)); },
                    {1, 1, -1});
}

TEST(SameMachineOfBeams, WrittenInInches) {
  expect_same_beams([](const RandomMachine& m, std::uint64_t) { return case_text(m.tables, LengthUnit::inch); });
}

TEST(SameMachineOfBeams, ListsShuffled) {
  expect_same_beams([](const RandomMachine& m, std::uint64_t seed) { return case_text(shuffled(m.tables, seed)); });
}

TEST(SameMachineOfBeams, JoinsReversed) {
  expect_same_beams([](const RandomMachine& m, std::uint64_t) { return case_text(joins_reversed(m.tables)); });
}

TEST(SameMachineOfBeams, TwiceAsLarge) {
  expect_same_beams([](const RandomMachine& m, std::uint64_t) { return case_text(doubled(m.tables)); }, {2, 4, 1});
}

} // namespace
} // namespace bedbow::verification
