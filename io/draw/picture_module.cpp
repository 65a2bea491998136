#include "io/draw/picture_module.h"

#include "io/files/module.h"

namespace bedbow {

const PictureModule& picture_module() {
  static const auto& module = *static_cast<const PictureModule*>(
      load_module({"libbedbow_picture.so", "bedbow_picture_module", "writes pictures", "the cairo library"}));
  return module;
}

} // namespace bedbow
