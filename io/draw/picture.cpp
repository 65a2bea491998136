#include "io/draw/picture.h"

#include "io/draw/picture_module.h"
#include "io/draw/plot_axis.h"
#include "io/draw/raster.h"
#include "io/draw/surface.h"
#include "io/text/text.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr int fineness = 3;   ///< pixels are averages of 3 x 3
constexpr double room = 90;   ///< for title and scale, above and below [px]
constexpr double margin = 40; ///< at the sides [px]

// Ten bands of the map "cividis", which readers with any colour vision see in the same order.
// Source: Nunez, Anderton, Renslow, PLOS ONE 13(7), 2018.
constexpr std::array<std::uint32_t, 10> cividis{0x002962, 0x193b6d, 0x3c4d6e, 0x5c5f6e, 0x747272,
                                                0x8a8577, 0xa09978, 0xbbaf71, 0xdac561, 0xf6dd4c};

double greatest_move(const Surface& surface) {
  double most = 0;
  for (const SurfacePoint& p : surface.points) most = std::max(most, p.displacement.norm());
  return most;
}

double diagonal(const Surface& surface) {
  Eigen::AlignedBox3d box;
  for (const SurfacePoint& p : surface.points) box.extend(p.at);
  return box.diagonal().norm();
}

double good_factor(const Surface& surface) {
  const double most = greatest_move(surface);
  if (!(most > 0)) return 1;
  const double wanted = 0.05 * diagonal(surface) / most;
  const double power = std::pow(10, std::floor(std::log10(wanted)));
  for (const double digit : {5.0, 2.0, 1.0})
    if (digit * power <= wanted) return std::max(1.0, digit * power);
  return 1;
}

/// Rows: right, down, towards the eye, as seen from before, left and above. Parallel light rays: no perspective.
Eigen::Matrix3d view() {
  const Eigen::Vector3d eye = Eigen::Vector3d(-0.55, -1, 0.62).normalized();
  const Eigen::Vector3d right = Eigen::Vector3d::UnitZ().cross(eye).normalized();
  Eigen::Matrix3d out;
  out << right.transpose(), -eye.cross(right).transpose(), eye.transpose();
  return out;
}

/// The displaced points in pixels of the fine picture.
std::vector<RasterPoint> projected(const Surface& surface, double factor, double end, const PictureOptions& o) {
  std::vector<RasterPoint> points;
  Eigen::AlignedBox3d box;
  const Eigen::Matrix3d turn = view();
  for (const SurfacePoint& p : surface.points) {
    points.push_back({turn * (p.at + factor * p.displacement), p.displacement.norm() / end});
    box.extend(points.back().at);
  }
  const Eigen::Vector3d size = box.sizes();
  const double scale = std::min((o.width - 2 * margin) / size.x(), (o.height - 2 * room) / size.y());
  for (RasterPoint& p : points) {
    p.at = (p.at - box.center()) * (scale * fineness);
    p.at.x() += fineness * o.width / 2.0;
    p.at.y() += fineness * o.height / 2.0;
  }
  return points;
}

Pixels drawn(const Surface& surface, const std::vector<RasterPoint>& points, const PictureOptions& o) {
  Raster raster(o.width * fineness, o.height * fineness);
  const auto at = [&](int i) { return points[static_cast<std::size_t>(i)]; };
  for (std::size_t part = 0; part < surface.parts.size(); ++part) {
    const SurfacePart& p = surface.parts[part];
    for (int c = p.first_cell; c < p.first_cell + p.cells; ++c) {
      const auto [i, j, k, l] = surface.cells[static_cast<std::size_t>(c)];
      raster.triangle({at(i), at(j), at(k)}, static_cast<int>(part), cividis);
      if (l >= 0) raster.triangle({at(i), at(k), at(l)}, static_cast<int>(part), cividis);
    }
  }
  return {o.width, o.height, raster.shrunk(fineness)};
}

struct ScaleBar {
  double left, top, width, height;
};

ScaleBar scale_bar(const PictureOptions& o) {
  return {margin, o.height - 52.0, std::min(600.0, o.width - 2 * margin), 18};
}

void paint_scale(Pixels& pixels, const ScaleBar& bar) {
  for (int y = 0; y < static_cast<int>(bar.height); ++y)
    for (int x = 0; x < static_cast<int>(bar.width); ++x) {
      const auto band = static_cast<std::size_t>(x * static_cast<double>(cividis.size()) / bar.width);
      pixels.rgb[static_cast<std::size_t>((static_cast<int>(bar.top) + y) * pixels.width + static_cast<int>(bar.left) +
                                          x)] = cividis.at(std::min(band, cividis.size() - 1));
    }
}

/// Upper end of the scale [unit]: round, so that its marks are round.
Axis scale_axis(double most, const OutputUnit& unit) {
  return axis_over(0, most > 0 ? most / unit.size : 1, 5);
}

std::string factor_words(double factor) {
  return "movement shown \u00d7 " + fixed(factor, factor < 10 && factor != std::floor(factor) ? 1 : 0);
}

} // namespace

double good_factor(const Fields& fields) {
  return good_factor(surface_of(fields));
}

std::string machine_picture(const std::string& title, const StepResult& step, const OutputUnits& units,
                            const PictureOptions& o) {
  const Surface surface = surface_of(step.fields);
  if (surface.points.empty())
    throw std::invalid_argument("step " + step.name + " has nothing to draw: its fields were not kept");
  if (o.width < 400 || o.height < 300) throw std::invalid_argument("a picture is at least 400 x 300 pixels");
  const double factor = o.factor > 0 ? o.factor : good_factor(surface);
  const Axis axis = scale_axis(greatest_move(surface), units.length);
  Pixels pixels = drawn(surface, projected(surface, factor, axis.high * units.length.size, o), o);
  const ScaleBar bar = scale_bar(o);
  paint_scale(pixels, bar);
  using enum PictureText::Anchor;
  std::vector<PictureText> texts{{margin, 40, 24, printable(title), start, true},
                                 {margin, 68, 18, printable(step.name) + ", " + factor_words(factor), start, false},
                                 {margin, bar.top - 8, 16, "displacement [" + units.length.name + "]", start, false}};
  for (const double mark : axis.marks()) {
    const auto anchor = mark <= axis.low ? start : (mark >= axis.high - axis.step / 2 ? end : middle);
    texts.push_back(
        {bar.left + axis.place(mark) * bar.width, bar.top + bar.height + 18, 15, axis.label(mark), anchor, false});
  }
  return picture_module().png(pixels, texts);
}

} // namespace bedbow
