// Twenty more, written after the predicate, one for each way in which it can speak.
#include "tests/unit/mesh/check/faulty_machines.h"

namespace bedbow::test {

namespace {

constexpr double millimetre = 1e-3;

Bar& drawn_bar(Machine& m, BodyKind body, std::size_t i) {
  return m.body(body).bars[i];
}

/// A second rib behind the studs: between the two a spanner has no swing.
void add_second_rib(Machine& m) {
  Bar rib = drawn_bar(m, BodyKind::clamp, 1);
  rib.name = "second rib";
  rib.at.x() = 101 * millimetre;
  m.body(BodyKind::clamp).bars.push_back(rib);
}

} // namespace

std::vector<FaultyMachine> faults_of_the_drawing() {
  using enum FaultKind;
  using enum BodyKind;
  return {
      {"an apron that stands in the bed", overlap, "apron.face", "bed.top",
       [](Machine& m) { drawn_bar(m, apron, 0).at.x() = -35 * millimetre; }},
      {"a welded section that floats", gap, "clamp.flat", "clamp.tube",
       [](Machine& m) { drawn_bar(m, clamp, 1).at.y() += 3 * millimetre; }, "roof-flashing"},
      {"screws in one another's holes", pitch, "screws bed top on web", "",
       [](Machine& m) {
         m.screws[0].x = {25 * millimetre, 40 * millimetre, 55 * millimetre};
       }},
      {"a row that begins at the very end", edge_distance, "screws bed top on web", "bed.top",
       [](Machine& m) { m.screws[0].x.front() = 4 * millimetre; }},
      {"a stud hole through a screw", holes_meet, "post left end", "screws bed top on web",
       [](Machine& m) {
         m.posts[0].at = {75 * millimetre, 52 * millimetre, left_out};
       }},
      {"a stud in front of the nose, in the sheet", in_sheet, "post left middle", "the sheet",
       [](Machine& m) { m.posts[1].at.y() = 25 * millimetre; }},
      {"cams behind a bed that was made narrower", off_bar, "cam left", "bed.top",
       [](Machine& m) {
         drawn_bar(m, bed, 0).shape.width = 100 * millimetre;
         drawn_bar(m, bed, 0).at.x() = 50 * millimetre;
       }},
      {"an eccentric that turns in the web", pierces, "cam left", "bed.web",
       [](Machine& m) { m.cams[0].radius = 70 * millimetre; }},
      {"an eccentric on a stud", pierces, "post left end", "cam left",
       [](Machine& m) {
         m.cams[0].radius = 50 * millimetre;
         m.cams[0].at.x() = 45 * millimetre;
       }},
      {"an apron that hangs below the bed", face_off_line, "apron.face", "",
       [](Machine& m) {
         for (Bar& b : m.body(apron).bars) b.at.y() -= 3 * millimetre;
       }},
      {"a face that stands on edge", flange_off_face, "apron.face", "the flange",
       [](Machine& m) {
         std::swap(drawn_bar(m, apron, 0).shape.width, drawn_bar(m, apron, 0).shape.height);
         drawn_bar(m, apron, 0).at = {-11 * millimetre, -40 * millimetre};
       }},
      {"a land deeper than the plate", nose_off_bar, "clamp.plate", "the nose",
       [](Machine& m) { m.nose.land = 130 * millimetre; }},
      {"a rib over the bend line", swing, "the flange", "clamp.rib",
       [](Machine& m) { drawn_bar(m, clamp, 1).at.x() = 5 * millimetre; }},
      {"a stud through a closed section", pierces, "post left", "clamp.tube",
       [](Machine& m) {
         drawn_bar(m, clamp, 1).start = 0;
         drawn_bar(m, clamp, 1).length = 1250 * millimetre;
       },
       "roof-flashing"},
      {"a nut that turns but takes no spanner", spanner_room, "post left end", "clamp.rib",
       [](Machine& m) {
         m.posts[0].nut = NutSeat::plain;
         m.posts[0].at.y() = 68 * millimetre;
       }},
      {"a nut between two ribs", spanner_room, "post left end", "clamp.rib", add_second_rib},
      {"a lower nut in the web", nut_room, "post left", "bed.web",
       [](Machine& m) { m.posts[0].at.y() = 40 * millimetre; }, "built-up-bed"},
      {"a thread cut too near to the edge", edge_distance, "post left end", "bed.top",
       [](Machine& m) {
         m.posts[0].tapped = 20 * millimetre;
         m.posts[0].at.y() = 108 * millimetre;
       }},
      {"a hinge pin behind the bend line", hinge_off_line, "hinge right", "",
       [](Machine& m) {
         m.hinges[1].at = {900 * millimetre, 6 * millimetre, 0};
       }},
      {"a bearing that reaches into the sheet", in_sheet, "hinge left", "the sheet",
       [](Machine& m) { m.hinges[0].bearing_length = 60 * millimetre; }, "roof-flashing"},
  };
}

} // namespace bedbow::test
