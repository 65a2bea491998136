#include "io/text/base64.h"

#include <gtest/gtest.h>

#include <string_view>

namespace bedbow {

namespace {

std::string of(std::string_view text) {
  return base64(std::as_bytes(std::span(text)));
}

TEST(Base64, Rfc4648Section10) {
  EXPECT_EQ(of(""), "");
  EXPECT_EQ(of("f"), "Zg==");
  EXPECT_EQ(of("fo"), "Zm8=");
  EXPECT_EQ(of("foo"), "Zm9v");
  EXPECT_EQ(of("foob"), "Zm9vYg==");
  EXPECT_EQ(of("fooba"), "Zm9vYmE=");
  EXPECT_EQ(of("foobar"), "Zm9vYmFy");
}

TEST(Base64, HighBytes) {
  EXPECT_EQ(of("\xff\xfe\xfb"), "//77");
}

} // namespace

} // namespace bedbow
