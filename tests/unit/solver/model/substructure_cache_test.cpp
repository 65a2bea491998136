#include "io/sweep/variant.h"
#include "solver/model/substructure_cache.h"

#include <gtest/gtest.h>

#include <bit>
#include <cstdint>

namespace bedbow {

namespace {

const Case& sweep_case() {
  static const Case c = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid-sweep/case.toml", builtin_registries());
  return c;
}

void expect_same_bits(const VariantResult& a, const VariantResult& b) {
  EXPECT_EQ(a.failed, b.failed) << a.id;
  EXPECT_EQ(a.message, b.message) << a.id;
  EXPECT_EQ(a.utilisation_at, b.utilisation_at) << a.id;
  for (std::size_t i = 0; i < a.figures.size(); ++i)
    EXPECT_EQ(std::bit_cast<std::uint64_t>(a.figures[i]), std::bit_cast<std::uint64_t>(b.figures[i]))
        << a.id << " " << i;
}

} // namespace

// Whatever has been computed before, and however little the cache has room for, a variant is what it is by itself.
TEST(SubstructureCache, ChangesNoBit) {
  const Registries registries = builtin_registries();
  const VariantMaker maker(sweep_case(), registries);
  SubstructureCache roomy, tight(std::size_t(1) << 20), none(0);
  for (const std::uint64_t id : {0, 5, 10, 0, 1, 6, 74, 5, 0, 69, 64, 5}) {
    const VariantResult alone = maker.make(id);
    for (SubstructureCache* cache : {&roomy, &tight, &none}) expect_same_bits(alone, maker.make(id, cache));
  }
  EXPECT_GT(roomy.bytes(), 0U);
  EXPECT_LE(tight.bytes(), std::size_t(1) << 20);
  EXPECT_EQ(none.bytes(), 0U);
}

// The same matrix for another method, or with other places of its joints, is another part.
TEST(SubstructureCache, TellsPartsApart) {
  SymmetricMatrix k(2, 2);
  k.insert(0, 0) = 2;
  k.insert(1, 1) = 3;
  k.makeCompressed();
  Eigen::SparseMatrix<double> p(2, 1), q(2, 1);
  p.insert(0, 0) = 1;
  q.insert(1, 0) = 1;
  p.makeCompressed();
  q.makeCompressed();
  const Registries registries = builtin_registries();
  const LinearSolverEntry& solver = registries.linear_solvers.get("simplicial");
  const std::string other = "other";
  SubstructureCache cache;
  FactoredPart part{solver.factor(k, {}).factorization, Eigen::MatrixXd::Constant(1, 1, 0.5)};
  cache.keep({k, p, {}, solver.name}, std::move(part));
  ASSERT_NE(cache.find({k, p, {}, solver.name}), nullptr);
  EXPECT_EQ(cache.find({k, p, {}, solver.name})->compliance(0, 0), 0.5);
  EXPECT_EQ(cache.find({k, q, {}, solver.name}), nullptr);
  EXPECT_EQ(cache.find({k, p, {}, other}), nullptr);
  FactorHints banded;
  banded.banded_order = true;
  EXPECT_EQ(cache.find({k, p, banded, solver.name}), nullptr);
  k.coeffRef(1, 1) = 3.0000000000000004;
  EXPECT_EQ(cache.find({k, p, {}, solver.name}), nullptr);
}

} // namespace bedbow
