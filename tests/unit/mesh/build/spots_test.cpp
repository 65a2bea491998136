#include "mesh/build/spots.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace bedbow {

namespace {

constexpr double least = 0.004;

/// Stations on a grid of half a millimetre, many of them closer than `least`, some of them exactly that far apart.
struct Line {
  double from = 0, to = 0;
  std::vector<double> stations, kept;
};

Line random_line(std::mt19937& random) {
  const auto pick = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  std::vector<int> at{0};
  while (at.back() < 1000) at.push_back(at.back() + (pick(0, 2) == 0 ? pick(1, 8) : pick(8, 30)));
  Line out;
  for (const int i : at) {
    out.stations.push_back(0.15 + 0.0005 * i);
    if (pick(0, 9) == 0) out.kept.push_back(out.stations.back());
  }
  out.from = out.stations.front();
  out.to = out.stations.back();
  return out;
}

std::vector<Spot> spots_of(const Line& l) {
  return choose_spots(l.stations, l.kept, l.from, l.to, least);
}

Line mirrored(Line l, double about) {
  for (std::vector<double>* x : {&l.stations, &l.kept}) {
    for (double& v : *x) v = about - v;
    std::ranges::reverse(*x);
  }
  std::swap(l.from, l.to);
  l.from = about - l.from;
  l.to = about - l.to;
  return l;
}

/// Rounding, as another unit of length brings it.
Line shaken(Line l, std::mt19937& random) {
  std::uniform_real_distribution<double> shift(-1e-12, 1e-12);
  for (std::vector<double>* x : {&l.stations, &l.kept})
    for (double& v : *x) v += shift(random);
  l.from += shift(random);
  l.to += shift(random);
  return l;
}

} // namespace

// Of two close stations the first from the left was kept, so that 29 of 63 mirrored machines with stations closer than
// 4 mm answered something else than their originals.
TEST(Spots, OfAMirroredLineAreTheMirroredOnes) {
  std::mt19937 random(1);
  for (int i = 0; i < 300; ++i) {
    const Line line = random_line(random);
    const auto here = spots_of(line), there = spots_of(mirrored(line, 0.9));
    ASSERT_EQ(here.size(), there.size()) << i;
    for (std::size_t k = 0; k < here.size(); ++k) {
      EXPECT_NEAR(here[k].x, 0.9 - there[here.size() - 1 - k].x, 1e-12);
      EXPECT_NEAR(here[k].length, there[here.size() - 1 - k].length, 1e-12);
    }
  }
}

// Distances were compared to the last digit: inches gave other pads than millimetres.
TEST(Spots, DoNotDependOnTheLastDigits) {
  std::mt19937 random(2);
  for (int i = 0; i < 300; ++i) {
    const Line line = random_line(random);
    const auto here = spots_of(line), there = spots_of(shaken(line, random));
    ASSERT_EQ(here.size(), there.size()) << i;
    for (std::size_t k = 0; k < here.size(); ++k) EXPECT_NEAR(here[k].x, there[k].x, 1e-11);
  }
}

// A station left out once took its share of the held length to one side only, and the sheet's end took the place of the
// pad before it.
TEST(Spots, StandForTheWholeLengthTogether) {
  std::mt19937 random(3);
  for (int i = 0; i < 300; ++i) {
    const Line line = random_line(random);
    const auto spots = spots_of(line);
    double sum = 0, moment = 0;
    for (std::size_t k = 0; k < spots.size(); ++k) {
      sum += spots[k].length;
      const double left = k > 0 ? (spots[k - 1].x + spots[k].x) / 2 : line.from;
      moment += spots[k].length * (left + spots[k].length / 2);
    }
    EXPECT_NEAR(sum, line.to - line.from, 1e-12);
    EXPECT_NEAR(moment, (line.to * line.to - line.from * line.from) / 2, 1e-12) << "the stretches lie end to end";
  }
}

// Pads over posts were dropped where a station stood just left of them.
TEST(Spots, AreAtBothEndsAndWherePostsStand) {
  std::mt19937 random(4);
  for (int i = 0; i < 300; ++i) {
    const Line line = random_line(random);
    const auto spots = spots_of(line);
    EXPECT_EQ(spots.front().x, line.from);
    EXPECT_EQ(spots.back().x, line.to);
    for (const double k : line.kept)
      EXPECT_TRUE(std::ranges::any_of(spots, [&](const Spot& s) { return std::abs(s.x - k) < 1e-9; })) << k;
  }
}

// Wherever stations lie there are no more spots than would stand `least` apart, and a station left out has a spot near.
TEST(Spots, AreNeitherCrowdedNorFarApart) {
  std::mt19937 random(5);
  for (int i = 0; i < 300; ++i) {
    Line line = random_line(random);
    line.kept.clear();
    const auto spots = spots_of(line);
    EXPECT_LE(static_cast<double>(spots.size()), (line.to - line.from) / least + 2);
    for (const double s : line.stations)
      EXPECT_TRUE(std::ranges::any_of(spots, [&](const Spot& p) { return std::abs(p.x - s) < 1.1 * least; })) << s;
  }
}

// Elements of 3.75 mm lost every other pad, so that the mesh decided how far apart pads stood: twice as far as at 4 mm.
TEST(Spots, OfAnEvenMeshStandAsCloseAsAllowed) {
  for (const int pieces : {10, 40, 80, 119, 120, 149, 150, 151, 160, 200, 300, 600}) {
    std::vector<double> stations;
    for (int i = 0; i <= pieces; ++i) stations.push_back(0.15 + 0.6 * i / pieces);
    const auto spots = choose_spots(stations, {}, 0.15, 0.75, least);
    const std::size_t wanted = std::min<std::size_t>(pieces, 150) + 1;
    EXPECT_GE(spots.size(), wanted) << pieces;
    EXPECT_LE(spots.size(), wanted + (pieces > 150)) << pieces << ": one more where two stand alike beside the middle";
  }
}

TEST(Spots, KeepTwoPostsHoweverClose) {
  const auto spots = choose_spots({0, 0.1, 0.101, 0.2}, {0.1, 0.101}, 0, 0.2, least);
  ASSERT_EQ(spots.size(), 4U);
  EXPECT_NEAR(spots[1].length, 0.0505, 1e-12);
  EXPECT_NEAR(spots[2].length, 0.05, 1e-12);
}

} // namespace bedbow
