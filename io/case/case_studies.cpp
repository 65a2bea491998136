#include "io/case/case_builder.h"
#include "io/case/steps.h"
#include "io/text/nearest.h"

#include <cmath>
#include <stdexcept>
#include <utility>

namespace bedbow {

namespace {

/// What may follow `table` in a dotted key, by the schema; nullptr for a value.
const TableSpec* next_table(const KeySpec& key) {
  return key.table.empty() ? nullptr : &case_schema().table(key.table);
}

/// Whether the case has a table for the key, and the schema the key. A key that the file omits is fine.
std::string key_trouble(const CaseBuilder& b, const std::string& key) {
  std::string last;
  const CaseNode& root = b.out.source.root;
  if (find_key(root, key)) return "";
  const CaseNode* parent = find_parent(const_cast<CaseNode&>(root), key, last);
  if (!parent)
    return "the case has no table for \"" + key +
           "\"; an array of tables is followed by the name of one of them, as in \"bed.bar.web.height\"";
  // Follow the schema along the same path to see whether the last part is a key.
  const TableSpec* spec = &case_schema().root();
  std::string_view rest(key);
  rest.remove_suffix(std::min(rest.size(), last.size() + 1));
  while (!rest.empty()) {
    const std::size_t dot = std::min(rest.find('.'), rest.size());
    const KeySpec* step = spec->find(rest.substr(0, dot));
    if (!step || !next_table(*step)) break;
    spec = next_table(*step);
    rest.remove_prefix(std::min(dot + 1, rest.size()));
    if (step->kind == ValueKind::table) continue;
    // Skips the element's name, which may itself contain dots where it is a material's.
    const std::size_t end = step->kind == ValueKind::named ? rest.size() : std::min(rest.find('.'), rest.size());
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  if (spec->find(last)) return "";
  return "there is no key \"" + last + "\" in " + spec->heading + "; nearest is \"" + nearest(last, spec->key_names()) +
         "\"";
}

void check_keys(const CaseBuilder& b, const CaseValues& in, std::string_view from) {
  for (const std::string& key : in.texts(from))
    if (const std::string trouble = key_trouble(b, key); !trouble.empty()) b.wrong(in, from, trouble);
}

void rows_of(const CaseBuilder& b, const CaseValues& in, SweepVary& vary) {
  const CaseValue* rows = in.value("rows");
  if (!rows) return;
  for (const CaseNode& row : rows->node->items) {
    if (row.type == CaseNode::Type::list && row.items.size() == vary.keys.size()) {
      vary.rows.push_back(row.items);
      continue;
    }
    b.problems.error(row.pos, in.path("rows"),
                     shown(row) + " is not a list of " + std::to_string(vary.keys.size()) + " values, one per key");
  }
}

void steps_of(const CaseBuilder& b, const CaseValues& in, SweepVary& vary) {
  for (const char* key : {"from", "to", "steps"})
    if (!in.given(key)) b.missing(in, key, "expected `values`, or all of `from`, `to` and `steps`");
  const CaseValue *from = in.value("from"), *to = in.value("to");
  const int steps = in.integer_or("steps", 0);
  if (!from || !to || steps < 2) return;
  try {
    for (CaseNode& v : values_between(*from->node, *to->node, steps)) vary.rows.push_back({std::move(v)});
  } catch (const std::invalid_argument& e) {
    b.wrong(in, "to", e.what());
  }
}

SweepVary vary_of(const CaseBuilder& b, const CaseValues& in) {
  SweepVary vary;
  vary.pos = in.pos();
  const bool several = in.given("keys");
  if (several == in.given("key")) {
    if (several)
      b.wrong(in, "key", "give either `key` with `values`, or `keys` with `rows`");
    else
      b.missing(in, "key", "what is varied, as in key = \"bed.bar.web.height\"");
    return vary;
  }
  check_keys(b, in, several ? "keys" : "key");
  vary.keys = in.texts(several ? "keys" : "key");
  if (several) {
    if (!in.given("rows")) b.missing(in, "rows", "one list of values per row, in the order of `keys`");
    rows_of(b, in, vary);
  } else if (const CaseValue* values = in.value("values")) {
    for (const CaseNode& v : values->node->items) vary.rows.push_back({v});
  } else if (!in.given("values")) {
    steps_of(b, in, vary);
  }
  return vary;
}

void build_sweep(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("sweep");
  if (!in) return;
  SweepSpec& sweep = b.out.sweep;
  if (const auto sample = in->number("sample")) sweep.sample = static_cast<std::uint64_t>(*sample);
  sweep.seed = static_cast<std::uint64_t>(in->number("seed").value_or(1));
  for (const CaseValues& vary : in->tables("vary")) sweep.vary.push_back(vary_of(b, vary));
}

/// Sizes in the order of the shape's own list.
void sizes_of(const CaseBuilder& b, const CaseValues& in, Shape& shape) {
  const auto sizes = in.numbers("sizes");
  const ShapeEntry* entry = b.registries.shapes.find(shape.kind);
  if (sizes.empty() || !entry) return;
  if (sizes.size() != entry->sizes.size())
    return b.wrong(in, "sizes", "the shape \"" + shape.kind + "\" needs " + joined(entry->sizes));
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    const std::string& name = entry->sizes[i];
    if (name == "width")
      shape.width = sizes[i];
    else if (name == "height")
      shape.height = sizes[i];
    else if (name == "diameter")
      shape.diameter = sizes[i];
    else if (name == "wall")
      shape.wall = sizes[i];
    else
      shape.given[name] = sizes[i];
  }
}

StockItem stock_of(const CaseBuilder& b, const CaseValues& in) {
  StockItem item;
  item.pos = in.pos();
  item.name = in.text("name").value_or("");
  // The material is looked up as for a bar, but does not become one of the machine's.
  const std::size_t used = b.machine().materials.size();
  const int material = material_of(b, in);
  if (material >= 0) item.material = b.machine().materials[static_cast<std::size_t>(material)];
  b.machine().materials.resize(used);
  if (in.given("sizes")) {
    item.shape.kind = in.text("shape").value_or("");
    if (!item.shape.kind.empty() && !b.registries.shapes.find(item.shape.kind))
      b.wrong(in, "shape",
              "unknown section shape \"" + item.shape.kind + "\"; available: " + b.registries.shapes.names());
    sizes_of(b, in, item.shape);
  } else {
    item.shape = shape_of(b, in, 0.3);
  }
  item.price_per_metre = in.number("price");
  item.price_per_kg = in.number("price_per_kg");
  if (in.given("price") && in.given("price_per_kg"))
    b.wrong(in, "price", "give the price per metre or per kg, not both");
  item.bar_length = in.number("bar_length");
  return item;
}

FitUnknown unknown_of(const CaseBuilder& b, const CaseValues& in) {
  FitUnknown u;
  u.pos = in.pos();
  const bool several = in.given("keys");
  if (several && in.given("key")) b.wrong(in, "key", "give either `key` or `keys`");
  if (!several && !in.given("key")) b.missing(in, "key", "the key that is adjusted, as in \"support.left.stiffness\"");
  check_keys(b, in, several ? "keys" : "key");
  u.keys = in.texts(several ? "keys" : "key");
  if (const CaseValue* from = in.value("from")) u.from = *from->node;
  if (const CaseValue* to = in.value("to")) u.to = *to->node;
  return u;
}

} // namespace

void build_studies(const CaseBuilder& b) {
  build_sweep(b);
  for (const CaseValues& in : b.root.tables("stock")) b.out.stock.push_back(stock_of(b, in));
  if (const CaseValues* in = b.root.table("fit"))
    for (const CaseValues& u : in->tables("unknown")) b.out.fit.push_back(unknown_of(b, u));
}

} // namespace bedbow
