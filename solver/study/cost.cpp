#include "solver/study/cost.h"

#include "mesh/piece/si.h"

#include <cmath>
#include <limits>
#include <map>
#include <utility>

namespace bedbow {

namespace {

constexpr double same_size = 1e-6; // [m]

bool near(double a, double b) {
  return std::abs(a - b) <= same_size;
}

/// The priced stock of a material nearest in area; nullptr where there is none.
const StockItem* nearest_by_area(std::span<const StockItem> stock, const std::string& material, double area,
                                 const Registry<ShapeEntry>& shapes) {
  const StockItem* best = nullptr;
  double least = std::numeric_limits<double>::infinity();
  for (const StockItem& item : stock) {
    if (item.material.name != material || (!item.price_per_metre && !item.price_per_kg)) continue;
    const double off = std::abs(std::log(section_area(item.shape, shapes) / area));
    if (off < least) {
      least = off;
      best = &item;
    }
  }
  return best;
}

CutPiece price(CutPiece piece, const Shape& shape, const Material& material, std::span<const StockItem> stock,
               const Registry<ShapeEntry>& shapes) {
  const double area = section_area(shape, shapes);
  piece.mass = area * material.density * piece.length;
  piece.cost = nan;
  for (const StockItem& item : stock) {
    if (!fits(item, shape, material.name)) continue;
    piece.stock = item.name;
    piece.cost = piece.length * price_per_metre(item, shapes);
    if (std::isfinite(piece.cost)) return piece;
  }
  if (const StockItem* like = nearest_by_area(stock, material.name, area, shapes)) {
    piece.cost = piece.mass * price_per_kg(*like, shapes);
    piece.estimated = true;
  }
  return piece;
}

} // namespace

double section_area(const Shape& shape, const Registry<ShapeEntry>& shapes) {
  if (shape.kind == "rectangle") return shape.width * shape.height; // without computing all constants of a section
  return shapes.get(shape.kind).make(shape, 0.3).props.A;
}

bool fits(const StockItem& item, const Shape& shape, const std::string& material) {
  const Shape& s = item.shape;
  if (item.material.name != material || s.kind != shape.kind) return false;
  if (!near(s.diameter, shape.diameter) || !near(s.wall, shape.wall)) return false;
  if (s.given != shape.given) return false;
  if (near(s.width, shape.width) && near(s.height, shape.height)) return true;
  return near(s.width, shape.height) && near(s.height, shape.width);
}

double price_per_kg(const StockItem& item, const Registry<ShapeEntry>& shapes) {
  if (item.price_per_kg) return *item.price_per_kg;
  const double kg_per_metre = section_area(item.shape, shapes) * item.material.density;
  return item.price_per_metre && kg_per_metre > 0 ? *item.price_per_metre / kg_per_metre : nan;
}

double price_per_metre(const StockItem& item, const Registry<ShapeEntry>& shapes) {
  if (item.price_per_metre) return *item.price_per_metre;
  return item.price_per_kg ? *item.price_per_kg * section_area(item.shape, shapes) * item.material.density : nan;
}

MaterialCost material_cost(const Machine& machine, std::span<const StockItem> stock,
                           const Registry<ShapeEntry>& shapes) {
  MaterialCost out;
  const auto add = [&](std::string name, double length, const Shape& shape, int material) {
    CutPiece piece;
    piece.name = std::move(name);
    piece.length = length;
    out.pieces.push_back(price(std::move(piece), shape, machine.materials.at(material), stock, shapes));
    const CutPiece& made = out.pieces.back();
    out.total += made.cost;
    if (!std::isfinite(made.cost)) out.unpriced.push_back(made.name);
  };
  for (const Body& body : machine.bodies)
    for (const Bar& bar : body.bars) add(to_string(body.kind) + "." + bar.name, bar.length, bar.shape, bar.material);
  for (const Member& m : machine.members) add(m.name, (m.to - m.from).norm(), m.shape, m.material);
  std::map<std::pair<int, int>, double> own; // length of the user mesh's lines by section and material
  for (const OwnLine& l : machine.own.lines)
    own[{l.section, l.material}] += (machine.own.points.at(l.points[1]) - machine.own.points.at(l.points[0])).norm();
  for (const auto& [key, length] : own) {
    const OwnSection& section = machine.own.sections.at(key.first);
    add("mesh section " + section.name, length, section.shape, key.second);
  }
  return out;
}

} // namespace bedbow
