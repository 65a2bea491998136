// Written before the predicate existed. One change a machine; what a builder would say on seeing the drawing.
#include "tests/unit/mesh/check/faulty_machines.h"

namespace bedbow::test {

namespace {

constexpr double mm = 1e-3;

Bar& bar(Machine& m, BodyKind body, std::size_t i) {
  return m.body(body).bars[i];
}

} // namespace

std::vector<FaultyMachine> faults_of_the_shop() {
  using enum FaultKind;
  using enum BodyKind;
  return {
      // What stock once recommended.
      {"a web that floats under the top it is screwed to", gap, "bed.web", "bed.top",
       [](Machine& m) { bar(m, bed, 1).at.y() -= 24 * mm; }},
      {"an apron rib that floats below its face", gap, "apron.rib", "apron.face",
       [](Machine& m) { bar(m, apron, 1).at.y() -= 32 * mm; }},
      {"a rib behind the plate on which it should stand", gap, "clamp.rib", "clamp.plate",
       [](Machine& m) { bar(m, clamp, 1).at.x() += 100 * mm; }},
      {"cams beside a clamp plate that was made narrower", off_bar, "cam left", "clamp.plate",
       [](Machine& m) {
         bar(m, clamp, 0).shape.width = 100 * mm;
         bar(m, clamp, 0).at.x() = 53.5 * mm;
       }},
      {"a post beside its bar", off_bar, "post left end", "bed.top", [](Machine& m) { m.posts[0].at.y() = 122 * mm; }},
      {"a flange longer than the face is deep", flange_off_face, "apron.face", "the flange",
       [](Machine& m) { m.sheet->flange = 90 * mm; }},
      // The stud and its nut.
      {"a stud drilled down through the rib", pierces, "post left middle", "bed.web",
       [](Machine& m) { m.posts[1].at.y() = 40 * mm; }},
      {"a nut hard against the rib", nut_room, "post right end", "clamp.rib",
       [](Machine& m) { m.posts[3].at.y() = 63 * mm; }},
      {"a stud hole at the end of the bar", edge_distance, "post left end", "bed.top",
       [](Machine& m) { m.posts[0].at.x() = 15 * mm; }},
      {"a stud hole at the rear edge", edge_distance, "post left end", "bed.top",
       [](Machine& m) { m.posts[0].at.y() = 105 * mm; }},
      {"a stud shorter than the clamp is thick", stud_short, "post left end", "",
       [](Machine& m) { m.posts[0].free_length = 15 * mm; }},
      {"two studs in one another's nuts", nut_room, "post left middle", "post left end",
       [](Machine& m) { m.posts[1].at.x() = 70 * mm; }},
      // Cams and hinges.
      {"a cam in front of the posts", cam_before_post, "cam left", "post left end",
       [](Machine& m) { m.cams[0].at.y() = 56 * mm; }},
      {"a hinge pin below the bend line", hinge_off_line, "hinge left", "",
       [](Machine& m) {
         m.hinges[0].at = {0, 0, -15 * mm};
       }},
      {"a hinge under the sheet", in_sheet, "hinge left", "the sheet",
       [](Machine& m) { m.hinges[0].at.x() = 300 * mm; }},
      // Screws.
      {"screws that come out at the side of the web", edge_distance, "screws bed top on web", "bed.web",
       [](Machine& m) { m.screws[0].at.y() = 46 * mm; }},
      // The bend line.
      {"a bed that begins behind the bend line", edge_off_line, "bed.top", "",
       [](Machine& m) {
         for (Bar& b : m.body(bed).bars) b.at.x() += 4 * mm;
       }},
      {"a nose in the air", nose_off_sheet, "clamp.plate", "the sheet",
       [](Machine& m) {
         for (Bar& b : m.body(clamp).bars) b.at.y() += 12 * mm;
       }},
      {"a clamp in the flange's way", setback, "the nose", "the flange",
       [](Machine& m) {
         m.nose.setback = 0.5 * mm;
         for (Bar& b : m.body(clamp).bars) b.at.x() -= 3 * mm;
       }},
      {"two bars in one place", overlap, "bed.web", "bed.top", [](Machine& m) { bar(m, bed, 1).at.y() += 10 * mm; }},
  };
}

} // namespace bedbow::test
