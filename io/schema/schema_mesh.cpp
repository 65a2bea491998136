// A mesh supplied by the user.
#include "io/schema/schema.h"

#include <utility>

namespace bedbow::schema {

namespace {

TableSpec mesh() {
  KeySpec unit = kind_key("unit", ValueKind::unit, "unit of its coordinates and of its array `thickness`")
                     .like("mm")
                     .otherwise("mm")
                     .told();
  unit.dim = Dim::length;
  return {
      "mesh",
      "[mesh]",
      "A mesh supplied by the user, joined to the machine: lines are beams, quads are shells. Its cell arrays `part`, "
      "`section`, `thickness` and `material` describe each cell; its point arrays are sets to which [[hold]] and "
      "[[load]] refer by `points`. See docs/guide/mesh.md.",
      {text_key("file", "path, relative to the case's folder, of a VTK unstructured grid: .vtu, or legacy .vtk")
           .like("frame.vtu")
           .required(),
       std::move(unit),
       text_key("material", "of all cells, where the file has no cell array `material`").like("S275JR"),
       quantity_key("thickness", Dim::length, "10 mm", "of all quads, where the file has no cell array `thickness`")
           .positive(),
       boolean_key("joined", "points at one place, and points on a bar, member or panel, move together")
           .otherwise("true"),
       table_key("section", ValueKind::tables, "mesh_section", "sections of its lines")}};
}

TableSpec mesh_section() {
  std::vector<KeySpec> keys{
      text_key("name", "name as in the cell array `section`; without that array one section serves all lines")
          .like("leg")
          .otherwise("its number from 1")};
  const std::vector<KeySpec> shape = shape_keys();
  keys.insert(keys.end(), shape.begin(), shape.end());
  keys.push_back(number_key("up", "[x, y, z]: direction of the section's height")
                     .like("[0, 0, 1]")
                     .list(3, 3)
                     .otherwise("z, or y for a line along z"));
  return {"mesh_section", "[[mesh.section]]",
          "Section of lines of the user's mesh. For a rectangle, width is across, height along `up`.", std::move(keys),
          true};
}

} // namespace

void add_mesh(Schema& schema) {
  for (auto* make : {mesh, mesh_section}) schema.tables.push_back(make());
}

} // namespace bedbow::schema
