#include "io/case/case_mesh_arrays.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

const GridArray* find_array(const std::vector<GridArray>& arrays, const std::string& name) {
  const auto it = std::ranges::find(arrays, name, &GridArray::name);
  return it == arrays.end() ? nullptr : &*it;
}

std::string name_of_number(double number, const GridArray* words) {
  const bool has = words && number >= 0 && number < static_cast<double>(words->texts.size());
  return has ? words->texts[static_cast<std::size_t>(number)] : std::to_string(static_cast<long long>(number));
}

} // namespace

std::optional<std::vector<std::string>> names_on_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid,
                                                       const std::string& name) {
  const GridArray* array = find_array(grid.cell_arrays, name);
  if (!array) return std::nullopt;
  const std::size_t cells = grid.types.size();
  if (array->is_text && array->texts.size() == cells) return array->texts;
  const bool whole =
      !array->is_text && array->components == 1 && array->numbers.size() == cells &&
      std::ranges::all_of(array->numbers, [](double v) { return std::abs(v) < 1e15 && v == std::floor(v); });
  if (!whole) {
    b.wrong(in, "file",
            "its cell array \"" + name + "\" must have one string or one whole number for each of its " +
                std::to_string(cells) + " cells");
    return std::vector<std::string>(cells);
  }
  const GridArray* words = find_array(grid.fields, name + "_names");
  std::vector<std::string> out;
  for (double v : array->numbers) out.push_back(name_of_number(v, words));
  return out;
}

const GridArray* numbers_on_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid,
                                  const std::string& name) {
  const GridArray* array = find_array(grid.cell_arrays, name);
  if (!array) return nullptr;
  if (!array->is_text && array->components == 1 && array->numbers.size() == grid.types.size()) return array;
  b.wrong(in, "file", "its cell array \"" + name + "\" must have one number for each of its cells");
  return nullptr;
}

void UnknownNames::report(const CaseBuilder& b, const CaseValues& in, const std::string& array, const std::string& why,
                          const std::vector<std::string>& known) const {
  for (const auto& [name, cells] : cells_)
    b.wrong(in, "file",
            "\"" + name + "\" in its cell array \"" + array + "\" (cells " + number_list(cells) + "): " + why +
                (known.empty() ? "" : "; nearest is \"" + nearest(name, known) + "\""));
}

} // namespace bedbow
