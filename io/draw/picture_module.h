/// \file
/// Interface to the module that writes pictures with text as PNG. It uses cairo and needs no display; it is loaded when
/// the first picture is requested. Program and module are from the same build, so plain C++ types may be passed.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace bedbow {

/// Pixels in rows from the top, 0x00RRGGBB.
struct Pixels {
  int width = 0, height = 0;
  std::vector<std::uint32_t> rgb; ///< width * height
};

struct PictureText {
  enum class Anchor { start, middle, end };
  double x = 0, y = 0; ///< of the anchor on the base line [px]
  double height = 16;  ///< of the letters [px]
  std::string text;    ///< UTF-8
  Anchor anchor = Anchor::start;
  bool bold = false;
};

/// What the module's one exported function `bedbow_picture_module` returns.
struct PictureModule {
  const char* version; ///< of the build: must match the program's
  /// A PNG file as its bytes. Throws std::runtime_error.
  std::string (*png)(const Pixels& pixels, const std::vector<PictureText>& texts);
};

/// The module, loaded on the first call and kept. Throws FileError (see io/files/module.h).
const PictureModule& picture_module();

} // namespace bedbow
