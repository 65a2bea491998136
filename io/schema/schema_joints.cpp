// Joints between bars, and supports.
#include "io/schema/schema.h"
#include "mesh/machine/joint_kind.h"

#include <utility>

namespace bedbow::schema {

namespace {

struct JointTable {
  JointKind kind;
  const char* words; ///< in the list of a case's tables
  const char* doc;
  std::vector<KeySpec> keys;
};

KeySpec name() {
  return name_key("name", "name used in results and sweeps").like("left").otherwise("kind and number");
}

KeySpec joins() {
  return ref_key("joins",
                 "the two joined parts: \"body.bar\", the name of a member or panel, \"mesh.PART\", or \"ground\"")
      .list(2, 2)
      .required();
}

/// A place is x, or x and y, or at = [x, y, z].
std::vector<KeySpec> place(const std::string& otherwise = "where the two bars meet") {
  return {
      length("x", "40 mm", "place along the bend line"),
      length("y", "60 mm", "place across").otherwise(otherwise).told(),
      length("at", "40 mm", "[x, y, z] instead of x and y").list(3, 3),
  };
}

/// The patch on which a joint acts.
KeySpec seat() {
  return length("seat", "60 mm",
                "size of the patch that it acts on, along x and across; of a joint on an arm: on that side")
      .list(2, 2)
      .positive()
      .otherwise("what it touches, and the plate's thickness more; on an arm the bar's full height");
}

std::vector<KeySpec> stiffness(const std::string& whose) {
  return {
      quantity_key("stiffness", Dim::stiffness, "20 kN/mm",
                   "stiffness of " + whose + "; with N*m/rad, of the held rotations")
          .or_of(Dim::rotational_stiffness)
          .positive()
          .otherwise("rigid")
          .told(),
      quantity_key("rotational_stiffness", Dim::rotational_stiffness, "5000 N*m/rad",
                   "stiffness of the held rotations, where translations are held too")
          .positive()
          .otherwise("rigid"),
  };
}

KeySpec holds() {
  return choice_key("holds", movements, "held degrees of freedom").list(1, 6).required();
}

KeySpec grade() {
  return text_key("class", "property class, for its proof stress: \"8.8\", \"A2-70\", ...")
      .like("8.8")
      .otherwise("unknown");
}

KeySpec thread(std::string key) {
  return kind_key(std::move(key), ValueKind::thread, "thread size \"M20\", \"5/8-11\", or a plain diameter")
      .like("M20")
      .required();
}

/// Allowable value of a check in place of the built-in one.
KeySpec allowed(const std::string& what, Dim dim, std::string example, const std::string& otherwise) {
  return quantity_key("allowed_" + what, dim, std::move(example), "allowable value in place of the built-in one")
      .positive()
      .otherwise(otherwise);
}

std::vector<KeySpec> together(const std::vector<std::vector<KeySpec>>& parts) {
  std::vector<KeySpec> all;
  for (const auto& part : parts) all.insert(all.end(), part.begin(), part.end());
  return all;
}

/// Nuts of a post: bearing face and thread engagement.
std::vector<KeySpec> post_seat() {
  return {
      choice_key("seat", words_of(nut_seats),
                 "bearing face under the nut; a spherical one lets the stud follow a rocking clamp. Or the size of the "
                 "patch that the post acts on, along x and across, in place of its washer and the plate's thickness")
          .or_two_lengths()
          .otherwise(word_for(nut_seats, Post{}.nut)),
      length("washer_diameter", "37 mm", "diameter of the washer").positive().otherwise("the thread's plain washer"),
      length("washer_thickness", "3 mm", "thickness of the washer").positive().otherwise("the thread's plain washer"),
      length("engagement", "18 mm", "length of thread in the nut").positive().otherwise("a standard nut"),
      length("tapped", "20 mm", "length of thread in the lower bar, where the stud is screwed into it")
          .positive()
          .otherwise("a nut there as well"),
      allowed("seat", Dim::stress, "200 MPa", "yield of the clamp's bar"),
      allowed("thread", Dim::force, "40 kN", "from the tensile strengths"),
      allowed("stress", Dim::stress, "600 MPa", "yield of the class"),
  };
}

JointTable post() {
  return {
      JointKind::post, "studs that pull the clamp down",
      "Stud with nut: pulls the clamp down. Carries tension only along z, and sideways as a stud fixed at both ends.",
      together({{name(), joins()},
                place(),
                {thread("diameter"), grade(),
                 length("free_length", "140 mm", "length of the stud that stretches, from the nut's seat down")
                     .positive()
                     .required(),
                 quantity_key("preload", Dim::force, "5 kN", "force after clamping, before bending")
                     .not_negative()
                     .otherwise("a spring in all steps")
                     .told()},
                post_seat()})};
}

JointTable cam() {
  return {
      JointKind::cam, "eccentrics under the clamp's tail",
      "Eccentric that lifts the clamp's tail: compression only. Either `lift`, or `throw` and `angle`.",
      together({{name(), joins()},
                place(),
                {length("lift", "0.6 mm", "how far it would raise the tail if nothing resisted").not_negative(),
                 length("throw", "3 mm", "highest less lowest position").positive(),
                 quantity_key("angle", Dim::angle, "40 deg", "from its lowest position").between(-6.2832, 6.2832),
                 length("radius", "15 mm", "radius of the eccentric, for its contact pressure").positive(),
                 length("width", "16 mm", "width along its axis, for its contact pressure").positive(),
                 quantity_key("stiffness", Dim::stiffness, "500 kN/mm", "stiffness of the eccentric on its shaft")
                     .positive()
                     .otherwise("practically rigid")
                     .told(),
                 boolean_key("linked", "turned together with the other linked cams").otherwise("false"),
                 quantity_key("lag", Dim::angle, "2 deg", "angle by which it trails `angle`").otherwise("0 deg"),
                 quantity_key("touch", Dim::angle, "30 deg", "angle at which the nose just touches the sheet")
                     .between(0, 3.1416)
                     .otherwise("0 deg, its lowest position"),
                 boolean_key("captive", "sits in a hole of the clamp and also moves it to and fro").otherwise("false"),
                 seat(),
                 text_key("material", "of the eccentric: built-in material or one of the case")
                     .like("bolt steel 8.8")
                     .otherwise("that of the bar it presses on"),
                 number_key("friction", "coefficient at the eccentric and its shaft")
                     .like("0.15")
                     .between(0, 2)
                     .otherwise("0.15, greased steel (common practice, no source)"),
                 length("shaft", "12 mm", "diameter of the shaft, for the hand moment")
                     .positive()
                     .otherwise("friction of the shaft neglected"),
                 length("lever", "250 mm", "length from the shaft to the hand").positive(),
                 allowed("pressure", Dim::stress, "600 MPa", "1.665 yield of the softer part")}})};
}

JointTable hinge() {
  return {
      JointKind::hinge, "pivots of the apron", "Pivot of the apron on the bend line: free about x.",
      together(
          {{name(), joins()},
           place("on the bend line"),
           {length("pin", "16 mm", "diameter of the pin").positive(),
            length("bearing_length", "16 mm", "length of the pin in its hole").positive(),
            length("gap", "1 mm", "clear distance along the pin between the parts").not_negative().otherwise("0 mm"),
            seat(), boolean_key("both_sides", "the pin is held by a cheek on either side").otherwise("false: overhung"),
            length("end_float", "0.4 mm",
                   "play along the pin in all, half of it each way; 0 mm locks the apron along x")
                .not_negative()
                .otherwise("the first hinge in the file locates the apron along x, the others float"),
            text_key("pin_material", "built-in material or one of the case")
                .like("bolt steel 8.8")
                .otherwise("that of the bar joined to the apron"),
            allowed("pressure", Dim::stress, "10 MPa", "by material pair"),
            allowed("stress", Dim::stress, "300 MPa", "yield of the pin"),
            allowed("seat", Dim::stress, "150 MPa", "0.6 yield of the softer of an overhung pin and its seat")}})};
}

JointTable handle() {
  return {JointKind::handle,
          "where the operator holds the apron",
          "Where the operator holds the apron: stops its rotation about x.",
          {name(), ref_key("bar", "the bar of the apron").like("apron.face").required(),
           length("x", "0 mm", "place along the bend line").required(), seat(),
           length("reach", "400 mm", "from the bend line to the hand, for the hand force").positive()}};
}

JointTable tie() {
  return {JointKind::tie, "any other joint", "Any other joint.",
          together({{name(), joins()},
                    place(),
                    {holds()},
                    stiffness("the held translations"),
                    {seat(), choice_key("only", words_of(only_choices), "carries tension or compression only")
                                 .otherwise("both ways")}})};
}

JointTable screws() {
  return {JointKind::screw, "rows of screws",
          "A row of screws between two bars, or a bar and quads of the mesh: from `first` at `pitch` to the end, or "
          "`count` screws, or "
          "up to `last`.",
          together({{name(), joins()},
                    {thread("size").like("M8"), grade().like("12.9"),
                     length("first", "25 mm", "x of the first screw").required(),
                     length("pitch", "50 mm", "from screw to screw").positive(),
                     integer_key("count", "number of screws").like("18").between(1, 10000),
                     length("last", "875 mm", "x of the last screw"),
                     length("y", "8 mm", "place across").otherwise("where the two bars meet").told(),
                     quantity_key("shear_stiffness", Dim::stiffness, "90 kN/mm", "shear stiffness of one screw")
                         .positive()
                         .otherwise("after Huth")
                         .told(),
                     seat(), allowed("shear", Dim::force, "12 kN", "EN 1993-1-8 Table 3.4"),
                     allowed("tension", Dim::force, "20 kN", "EN 1993-1-8 Table 3.4, at most the proof load"),
                     allowed("bearing", Dim::stress, "400 MPa", "1.5 yield of the bar")}})};
}

JointTable weld() {
  return {
      JointKind::weld,
      "bars joined without slip",
      "Two bars joined along x without slip.",
      {name(), joins(), length("from", "0 mm", "x where it begins").otherwise("the common length").told(),
       length("to", "900 mm", "x where it ends").otherwise("the common length").told(),
       integer_key("sides", "2: a seam along either edge of the faces that meet, as fillets on both sides of a foot")
           .like("2")
           .between(1, 2)
           .otherwise("1: a seam in their middle")}};
}

JointTable support() {
  return {JointKind::support, "supports of the machine", "A bar held to ground.",
          together({{name(), ref_key("bar", "the bar, member or panel").required()},
                    place("at the bar's centroid"),
                    {holds(), seat()},
                    stiffness("the held translations")})};
}

const std::vector<JointTable>& joint_tables() {
  static const std::vector<JointTable> tables{post(), cam(), hinge(), handle(), tie(), screws(), weld(), support()};
  return tables;
}

} // namespace

std::vector<KeySpec> joint_table_keys() {
  std::vector<KeySpec> out;
  for (const JointTable& t : joint_tables())
    out.push_back(table_key(info(t.kind).key, ValueKind::tables, info(t.kind).key, t.words));
  return out;
}

void add_joints(Schema& schema) {
  for (const JointTable& t : joint_tables()) {
    const std::string key = info(t.kind).key;
    schema.tables.push_back({key, "[[" + key + "]]", t.doc, t.keys});
  }
}

} // namespace bedbow::schema
