#include "tests/verification/machine/random_machine.h"

#include "tests/verification/support/dice.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace bedbow::verification {

namespace {

double tenth(double mm) {
  return std::round(mm * 10) / 10;
}

/// A bar's outline in the section: y and z of its lower corner, width and height [mm].
struct Box {
  double y = 0, z = 0, width = 0, height = 0;
  [[nodiscard]] double top() const { return z + height; }
  [[nodiscard]] double middle() const { return y + width / 2; }
};

enum class Clamp { rib, spine, tube, fingers, plate };

class Drawing {
  using enum Quantity;

public:
  explicit Drawing(std::uint64_t seed)
      : dice_(seed) {}

  RandomMachine draw() {
    kind_ = draw_kind();
    const bool fine = kind_ != Clamp::plate && dice_.chance(0.12);
    size_ = kind_ == Clamp::plate ? 40
            : fine                ? dice_.of(std::array{3.75, 4.0, 5.0})
                                  : dice_.of(std::array{10., 15., 20., 25.});
    length_ = std::round(fine || kind_ == Clamp::plate ? dice_.between(400, 560) : dice_.between(450, 1400));
    add_materials();
    add_sheet();
    add_bed();
    add_clamp();
    add_apron();
    add_posts();
    add_tail();
    add_hinges();
    add_stand();
    add_loads();
    add_dials();
    add("[solve]").number("element_size", length, size_).numbers("angles", angle, {0, angle_});
    return {std::move(what_), length_, close_, std::move(tables_)};
  }

private:
  // The reference that add returns lasts until the next call.
  CaseTable& add(const std::string& heading) {
    tables_.push_back({heading, {}});
    return tables_.back();
  }

  Clamp draw_kind() {
    const double p = dice_.between(0, 1);
    return p < 0.45   ? Clamp::rib
           : p < 0.65 ? Clamp::spine
           : p < 0.82 ? Clamp::tube
           : p < 0.94 ? Clamp::fingers
                      : Clamp::plate;
  }

  void add_materials() {
    add("[material.flat]")
        .number("E", stress, 205e3)
        .number("nu", plain, 0.29)
        .number("density", density, 7850)
        .number("yield", stress, 275);
    add("[material.blank]")
        .number("E", stress, 208e3)
        .number("nu", plain, 0.3)
        .number("yield", stress, dice_.on_grid(160, 320, 1));
  }

  void add_sheet() {
    thickness_ = dice_.on_grid(0.6, 2);
    const double radius = dice_.of(std::array{0.5, 1., 1.5, 2.});
    const double width = tenth(length_ * dice_.between(0.45, 0.9));
    const double room = std::min(length_ - width, 0.3 * length_) / 2;
    const double centre = dice_.chance(0.35) ? length_ / 2 : tenth(length_ / 2 + dice_.between(-room, room));
    flange_ = dice_.on_grid(15, 40);
    grip_ = dice_.on_grid(8, 20);
    setback_ = tenth(thickness_ + radius) + (dice_.chance(0.3) ? 1 : 0);
    angle_ =
        kind_ == Clamp::spine ? dice_.of(std::array{30., 45., 60., 80.}) : dice_.of(std::array{45., 60., 80., 90.});
    if (angle_ > 85) setback_ += 2; // the apron swings past a right angle, as far as sheet and machine spring
    left_ = centre - width / 2;
    right_ = centre + width / 2;
    add("[sheet]")
        .text("material", "blank")
        .number("thickness", length, thickness_)
        .number("width", length, width)
        .number("centre", length, centre)
        .number("flange", length, flange_)
        .number("inside_radius", length, radius)
        .number("angle", angle, angle_)
        .number("grip", length, grip_);
  }

  CaseTable& add_bar(const std::string& body, const std::string& name, const Box& box, double wall = 0) {
    CaseTable& t = add("[[" + body + ".bar]]");
    t.text("name", name).text("shape", wall > 0 ? "tube" : "rectangle");
    t.number("width", length, box.width).number("height", length, box.height);
    if (wall > 0) t.number("wall", length, wall);
    t.numbers("at", length, {box.middle(), box.z + box.height / 2});
    return t;
  }

  /// Screws or a weld that join two bars of a body.
  void join_bars(const std::string& body, const std::string& one, const std::string& other, double y) {
    const std::vector<std::string> joins = {body + "." + one, body + "." + other};
    if (dice_.chance(0.4)) {
      CaseTable& t = add("[[weld]]");
      t.text("name", body + " " + one + " seam").texts("joins", joins);
      if (dice_.chance(0.4))
        t.number("from", length, dice_.on_grid(0, 30)).number("to", length, tenth(length_ - dice_.between(0, 30)));
      return;
    }
    const double pitch = dice_.on_grid(40, 90);
    const double first = dice_.on_grid(12, 35);
    const int count = 1 + static_cast<int>((length_ - first - 12) / pitch);
    for (int i = 0; i < count; ++i) marks_.push_back(first + i * pitch);
    CaseTable& t = add("[[screws]]");
    t.text("name", body + " " + one + " row")
        .texts("joins", joins)
        .number("size", length, dice_.of(std::array{6., 8., 10.}))
        .number("first", length, first)
        .number("pitch", length, pitch)
        .number("count", plain, count)
        .number("y", length, y);
    if (dice_.chance(0.5)) t.number("shear_stiffness", stiffness, dice_.on_grid(20, 200, 1) * 1e3);
  }

  void add_crown(const std::string& body) {
    if (!dice_.chance(0.2)) return;
    const double a = tenth(length_ * dice_.between(0.1, 0.3));
    const double b = tenth(length_ * dice_.between(0.35, 0.6));
    const double c = tenth(length_ * dice_.between(0.7, 0.9));
    add("[" + body + ".crown]")
        .numbers("x", length, {a, b, c})
        .numbers("height", length, {0, dice_.on_grid(0.02, 0.1, 0.01), dice_.on_grid(0, 0.05, 0.01)});
  }

  void add_bed() {
    add("[bed]").number("length", length, length_).text("material", "flat");
    depth_ = dice_.on_grid(95, 140, 1); // to where the tail of the clamp ends
    if (dice_.chance(0.3)) {
      bed_ = foot_ = "bed.tube";
      ground_ = {0, -dice_.on_grid(80, 140, 1), depth_, 0};
      ground_.height = -ground_.z;
      add_bar("bed", "tube", ground_, dice_.of(std::array{4., 5., 6.}));
    } else {
      const double h = dice_.on_grid(12, 25, 1);
      add_bar("bed", "top", {0, -h, depth_, h});
      ground_ = {dice_.on_grid(20, 50, 1), 0, dice_.on_grid(12, 25, 1), dice_.on_grid(80, 140, 1)};
      ground_.z = -h - ground_.height;
      add_bar("bed", "web", ground_);
      join_bars("bed", "top", "web", ground_.middle());
      bed_ = "bed.top";
      foot_ = "bed.web";
      add("[bed.edge]").text("bar", "top");
    }
    add_crown("bed");
  }

  void add_nose(const std::string& bar) {
    add("[clamp.nose]")
        .text("bar", bar)
        .number("setback", length, setback_)
        .number("land", length, dice_.on_grid(8, 18));
  }

  void add_clamp() {
    add("[clamp]").number("length", length, length_).text("material", "flat");
    Box flat{setback_, thickness_, depth_ - setback_, dice_.on_grid(12, 25, 1)};
    if (kind_ == Clamp::spine) {
      flat.width = dice_.on_grid(40, 70, 1);
      flat.height = dice_.on_grid(40, 60, 1);
    } else if (kind_ == Clamp::fingers) {
      add_fingers(flat);
    }
    clamp_ = "clamp.flat";
    CaseTable& bar = add_bar("clamp", "flat", flat);
    if (kind_ == Clamp::plate) bar.text("model", "plate");
    add_nose("flat");
    nose_ = flat;
    if (kind_ == Clamp::rib || kind_ == Clamp::fingers) {
      const Box rib{tenth(flat.y + dice_.between(30, 45)), flat.top(), dice_.on_grid(12, 25, 1),
                    dice_.on_grid(60, 110, 1)};
      add_bar("clamp", "rib", rib);
      join_bars("clamp", "flat", "rib", rib.middle());
    } else if (kind_ == Clamp::tube) {
      const Box tube{tenth(flat.y + dice_.between(25, 35)), flat.top(), dice_.on_grid(40, 50, 1),
                     dice_.on_grid(60, 120, 1)};
      add_bar("clamp", "tube", tube, dice_.of(std::array{3., 4., 5.}));
      join_bars("clamp", "flat", "tube", tube.middle());
    }
    static constexpr std::array words = {"rib", "spine", "tube", "fingers", "plate"};
    what_ += words[static_cast<std::size_t>(kind_)];
    add_crown("clamp");
  }

  /// Fingers under the flat, which stands back and above them.
  void add_fingers(Box& flat) {
    const double height = dice_.on_grid(8, 14, 1);
    const double reach = dice_.on_grid(25, 45, 1);
    flat.y = setback_ + reach - 10;
    flat.width = depth_ - flat.y;
    flat.z += height;
    std::vector<double> starts, widths;
    double x = tenth(std::max(left_ - dice_.between(0, 20), 0.));
    while (x < right_ - 2) {
      const double width = std::min(dice_.on_grid(6, 120), tenth(length_ - x));
      starts.push_back(x);
      widths.push_back(width);
      x = tenth(x + width + 0.2);
    }
    CaseTable& t = add("[clamp.fingers]");
    t.numbers("starts", length, starts)
        .numbers("widths", length, widths)
        .number("reach", length, reach)
        .number("thickness", length, height);
    if (dice_.chance(0.5)) t.number("root_stiffness", turn_stiffness, dice_.on_grid(5e3, 5e4, 1));
  }

  void add_apron() {
    add("[apron]").number("length", length, length_).text("material", "flat");
    const int flats = dice_.whole(1, 3);
    Box face{0, 0, std::max(dice_.on_grid(50, 90, 1), flange_ + 2),
             flats == 1 ? dice_.on_grid(30, 60, 1) : dice_.on_grid(12, 25, 1)};
    face.y = -1 - face.width;
    face.z = -face.height;
    add_bar("apron", "face", face);
    add("[apron.face]").text("bar", "face");
    what_ += ", apron of " + std::to_string(flats);
    if (flats == 1) return;
    Box rib{tenth(face.y + face.width * 0.4), 0, dice_.on_grid(12, 20, 1), dice_.on_grid(50, 90, 1)};
    rib.z = face.z - rib.height;
    add_bar("apron", "rib", rib);
    join_bars("apron", "face", "rib", rib.middle());
    if (flats == 2) return;
    Box foot{0, 0, dice_.on_grid(30, 50, 1), dice_.on_grid(8, 12, 1)};
    foot.y = rib.middle() - foot.width / 2;
    foot.z = rib.z - foot.height;
    add_bar("apron", "foot", foot);
    join_bars("apron", "rib", "foot", rib.middle());
  }

  /// A place less than 4 mm from a screw, another joint or a sheet's end near x, or x itself.
  double near_something(double x, double share) {
    if (!dice_.chance(share)) return x;
    std::vector<double> marks = marks_;
    marks.insert(marks.end(), {left_, right_});
    const double mark = *std::ranges::min_element(marks, {}, [&](double m) { return std::abs(m - x); });
    // On the mark itself, just the 4 mm off at which pads were once thinned, or anywhere nearer.
    const double p = dice_.between(0, 1);
    const double off = p < 0.1 ? 0 : p < 0.25 ? 4 : dice_.on_grid(0.3, 4);
    const double place = mark + (dice_.chance(0.5) ? off : -off);
    if (place < 5 || place > length_ - 5) return x;
    close_ = true;
    return place;
  }

  double add_mark(double x) {
    marks_.push_back(x);
    return x;
  }

  void add_posts() {
    const int count = kind_ == Clamp::plate ? 2 : dice_.whole(2, 4);
    const double end = length_ * dice_.between(0.03, 0.07);
    const double y = tenth(nose_.y + nose_.width * dice_.between(0.45, 0.58));
    const bool preloaded = !dice_.chance(0.15);
    for (int i = 0; i < count; ++i) {
      const double even = end + (length_ - 2 * end) * i / (count - 1);
      const double inner = i == 0 || i == count - 1 ? 0 : dice_.between(-0.06, 0.06) * length_;
      posts_.push_back(add_mark(near_something(tenth(even + inner), 0.75)));
      CaseTable& t = add("[[post]]");
      t.text("name", "P" + std::to_string(i + 1))
          .texts("joins", {bed_, clamp_})
          .number("x", length, posts_.back())
          .number("y", length, y)
          .number("diameter", length, dice_.of(std::array{16., 20., 24.}))
          .number("free_length", length, dice_.on_grid(80, 150, 1));
      if (preloaded) t.number("preload", force, dice_.on_grid(6, 20) * 1e3);
    }
    post_y_ = y;
  }

  /// What presses the nose down or keeps the clamp from tipping: cams under its tail, or guides at the outer posts.
  void add_tail() {
    if (kind_ == Clamp::spine || dice_.chance(0.2)) {
      what_ += ", guides";
      const double z = thickness_;
      add("[[tie]]")
          .text("name", "G1")
          .texts("joins", {bed_, clamp_})
          .numbers("at", length, {posts_.front(), post_y_, z})
          .texts("holds", {"x", "y", "rx", "rz"});
      add("[[tie]]")
          .text("name", "G2")
          .texts("joins", {bed_, clamp_})
          .numbers("at", length, {posts_.back(), post_y_, z})
          .texts("holds", {"y", "rx"});
      return;
    }
    what_ += ", cams";
    const double y = tenth(nose_.y + nose_.width * dice_.between(0.86, 0.95));
    const bool soft = dice_.chance(0.7);
    const double lift = dice_.on_grid(0.1, 0.4, 0.01);
    for (int i = 0; i < 2; ++i) {
      const double aside = length_ * dice_.between(0.04, 0.12);
      const double x = add_mark(near_something(tenth(i == 0 ? aside : length_ - aside), 0.6));
      CaseTable& t = add("[[cam]]");
      t.text("name", "C" + std::to_string(i + 1))
          .texts("joins", {bed_, clamp_})
          .number("x", length, x)
          .number("y", length, y)
          .number("lift", length, lift);
      if (soft) t.number("stiffness", stiffness, dice_.on_grid(100, 800, 1) * 1e3);
    }
  }

  void add_hinges() {
    std::vector<double> x = {dice_.on_grid(0, 12), tenth(length_ - dice_.between(0, 12))};
    if (dice_.chance(0.2)) x.push_back(tenth(length_ * dice_.between(0.4, 0.6)));
    for (std::size_t i = 0; i < x.size(); ++i)
      add("[[hinge]]")
          .text("name", "H" + std::to_string(i + 1))
          .texts("joins", {bed_, "apron.face"})
          .number("x", length, x[i])
          .number("pin", length, 16)
          .number("bearing_length", length, 20);
    const int handles = dice_.whole(1, 2);
    for (int i = 0; i < handles; ++i)
      add("[[handle]]")
          .text("name", "handle " + std::to_string(i + 1))
          .text("bar", "apron.face")
          .number("x", length, near_something(tenth(length_ * (0.12 + 0.7 * i)), 0.3));
  }

  void add_stand() {
    const double left = near_something(tenth(length_ * dice_.between(0.06, 0.2)), 0.4);
    const double right = near_something(tenth(length_ * dice_.between(0.8, 0.94)), 0.4);
    if (dice_.chance(0.18)) return add_legs(left, right);
    const bool soft = dice_.chance(0.3);
    for (const bool first : {true, false}) {
      CaseTable& t = add("[[support]]");
      t.text("name", first ? "S1" : "S2").text("bar", foot_).number("x", length, first ? left : right);
      t.texts("holds",
              first ? std::vector<std::string>{"x", "y", "z", "rx"} : std::vector<std::string>{"y", "z", "rx"});
      if (soft) t.number("stiffness", stiffness, 2e4).number("rotational_stiffness", turn_stiffness, 3e4);
    }
  }

  CaseTable& add_member(const std::string& name, const std::vector<double>& from, const std::vector<double>& to) {
    CaseTable& t = add("[[member]]");
    t.text("name", name).text("shape", "tube").text("material", "flat");
    t.number("width", length, 40).number("height", length, 50).number("wall", length, 3);
    t.numbers("from", length, from).numbers("to", length, to);
    return t;
  }

  /// Legs under the bed that stand fast, and a brace from the foot of one to the other between its ends, in a T.
  void add_legs(double left, double right) {
    what_ += ", legs";
    const double y = ground_.middle();
    const double height = dice_.on_grid(400, 700, 1);
    const double floor = ground_.z - height;
    add_member("left leg", {left, y, floor}, {left, y, ground_.z}).numbers("up", plain, {0, 1, 0});
    add_member("right leg", {right, y, floor}, {right, y, ground_.z}).numbers("up", plain, {0, 1, 0});
    const double up = dice_.of(std::array{0.5, 0.4, 0.63});
    add_member("brace", {left, y, floor}, {right, y, floor + height * up}).numbers("up", plain, {0, 1, 0});
    for (const double x : {left, right})
      add("[[hold]]").numbers("at", length, {x, y, floor}).texts("holds", {"x", "y", "z", "rx", "ry", "rz"});
  }

  void add_loads() {
    if (dice_.chance(0.3)) add("[[load]]").flag("gravity");
    if (dice_.chance(0.35))
      add("[[load]]")
          .text("on", clamp_)
          .numbers("at", length,
                   {near_something(tenth(length_ * dice_.between(0.2, 0.8)), 0.5), nose_.middle(), nose_.top()})
          .numbers("force", force,
                   {dice_.on_grid(-200, 200, 1), dice_.on_grid(-200, 200, 1), dice_.on_grid(-600, 0, 1)})
          .numbers("moment", moment, {dice_.on_grid(-10, 10, 1), dice_.on_grid(-10, 10, 1), dice_.on_grid(-10, 10, 1)});
  }

  void add_dials() {
    add("[[dial]]")
        .text("name", "nose")
        .text("on", clamp_)
        .numbers("at", length, {(left_ + right_) / 2, setback_, thickness_});
    add("[[dial]]")
        .text("name", "edge")
        .text("on", bed_)
        .numbers("at", length, {tenth(length_ * dice_.between(0.2, 0.8)), 0, 0});
    add("[[dial]]")
        .text("name", "lip")
        .text("on", "apron.face")
        .numbers("at", length, {tenth(length_ * dice_.between(0.1, 0.9)), -flange_, 0});
  }

  Dice dice_;
  Clamp kind_ = Clamp::rib;
  std::string what_, bed_, foot_, clamp_;
  double length_ = 0, size_ = 0, thickness_ = 0, flange_ = 0, grip_ = 0, setback_ = 0, angle_ = 0, left_ = 0,
         right_ = 0;
  double depth_ = 0, post_y_ = 0;     ///< of the bed's top and of the posts, along y [mm]
  Box ground_, nose_;                 ///< the bed's lowest bar, the clamp's bar that carries the nose
  std::vector<double> marks_, posts_; ///< x of what later joints may stand close to [mm]
  bool close_ = false;
  CaseTables tables_;
};

} // namespace

RandomMachine random_machine(std::uint64_t seed) {
  return Drawing(seed).draw();
}

} // namespace bedbow::verification
