#include "mesh/piece/shapes.h"
#include "solver/study/cost.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

Shape flat(double width, double height) {
  Shape s;
  s.width = width;
  s.height = height;
  return s;
}

struct Cost : testing::Test {
  Cost() {
    builtin_shapes(shapes);
    Material steel;
    steel.name = "steel";
    steel.density = 8000;
    machine.materials = {steel};
    Bar bar;
    bar.name = "web";
    bar.material = 0;
    bar.length = 2;
    bar.shape = flat(0.016, 0.08);
    machine.body(BodyKind::bed).bars = {bar};
    StockItem item;
    item.name = "flat 80 x 16";
    item.shape = flat(0.08, 0.016);
    item.material = steel;
    item.price_per_metre = 14.2;
    stock = {item};
  }
  Registry<ShapeEntry> shapes{"section shape"};
  Machine machine;
  std::vector<StockItem> stock;
};

TEST_F(Cost, LengthTimesPriceEitherWayUp) {
  const MaterialCost c = material_cost(machine, stock, shapes);
  EXPECT_DOUBLE_EQ(c.total, 28.4);
  EXPECT_EQ(c.pieces[0].stock, "flat 80 x 16");
  EXPECT_DOUBLE_EQ(c.pieces[0].mass, 0.016 * 0.08 * 2 * 8000);
}

TEST_F(Cost, OtherSizesByWeightLikeTheNearest) {
  machine.body(BodyKind::bed).bars[0].shape = flat(0.016, 0.04); // half the weight
  StockItem dear = stock[0];
  dear.shape = flat(0.2, 0.02);
  dear.price_per_metre = 1000;
  stock.push_back(dear);
  const MaterialCost c = material_cost(machine, stock, shapes);
  EXPECT_DOUBLE_EQ(c.total, 14.2);
  EXPECT_TRUE(c.pieces[0].estimated);
}

TEST_F(Cost, PricePerKilogram) {
  stock[0].price_per_metre.reset();
  stock[0].price_per_kg = 2;
  EXPECT_DOUBLE_EQ(material_cost(machine, stock, shapes).total, 2 * 0.016 * 0.08 * 2 * 8000);
}

TEST_F(Cost, UnknownWithoutStockOfTheMaterial) {
  stock[0].material.name = "oak";
  const MaterialCost c = material_cost(machine, stock, shapes);
  EXPECT_TRUE(std::isnan(c.total));
  EXPECT_EQ(c.unpriced, std::vector<std::string>{"bed.web"});
}

} // namespace
} // namespace bedbow
