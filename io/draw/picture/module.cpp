// The one translation unit that knows cairo. See io/draw/picture_module.h.
#include "io/draw/picture_module.h"

#include <cairo.h>

#include <cstring>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Context = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

void copy(const Pixels& from, cairo_surface_t* to) {
  cairo_surface_flush(to);
  unsigned char* rows = cairo_image_surface_get_data(to);
  const int stride = cairo_image_surface_get_stride(to);
  for (int y = 0; y < from.height; ++y)
    std::memcpy(rows + static_cast<std::ptrdiff_t>(y) * stride,
                from.rgb.data() + static_cast<std::ptrdiff_t>(y) * from.width,
                static_cast<std::size_t>(from.width) * sizeof(std::uint32_t));
  cairo_surface_mark_dirty(to);
}

void write(cairo_t* on, const PictureText& t) {
  cairo_select_font_face(on, "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                         t.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(on, t.height);
  cairo_text_extents_t size;
  cairo_text_extents(on, t.text.c_str(), &size);
  const double share = t.anchor == PictureText::Anchor::start ? 0 : (t.anchor == PictureText::Anchor::middle ? 0.5 : 1);
  cairo_move_to(on, t.x - share * size.x_advance, t.y);
  cairo_show_text(on, t.text.c_str());
}

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

std::string png(const Pixels& pixels, const std::vector<PictureText>& texts) {
  const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels.width, pixels.height),
                        cairo_surface_destroy);
  if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("cannot make a picture of this size: ") + cairo_status_to_string(status));
  copy(pixels, surface.get());
  const Context context(cairo_create(surface.get()), cairo_destroy);
  cairo_set_source_rgb(context.get(), 0.1, 0.1, 0.1);
  for (const PictureText& t : texts) write(context.get(), t);
  if (const auto status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("cannot draw the text of the picture: ") + cairo_status_to_string(status));
  std::string out;
  if (const auto status = cairo_surface_write_to_png_stream(surface.get(), append, &out);
      status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("cannot encode the picture as PNG: ") + cairo_status_to_string(status));
  return out;
}

const PictureModule module{BEDBOW_VERSION, png};

} // namespace

} // namespace bedbow

extern "C" __attribute__((visibility("default"))) const void* bedbow_picture_module() {
  return &bedbow::module;
}
