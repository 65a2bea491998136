#include "io/text/json_text.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>

using Json = nlohmann::ordered_json;
using bedbow::json_text;

TEST(JsonText, ListsOfNumbersStandOnOneLine) {
  EXPECT_EQ(json_text({{"z", {1, 2.5}}, {"a", {{"b", Json::array({Json::array({1}), 2})}}}}),
            "{\n \"z\": [1,2.5],\n \"a\": {\n  \"b\": [\n   [1],\n   2\n  ]\n }\n}\n");
  EXPECT_EQ(json_text(Json::object()), "{}\n");
  EXPECT_EQ(json_text(Json::array()), "[]\n");
}

TEST(JsonText, ReadsBackTheSame) {
  const Json value{{"x", 0.1}, {"text", "quote \" and \n ü"}, {"nested", {{"list", {true, nullptr, -1e-300}}}}};
  EXPECT_EQ(Json::parse(json_text(value)), value);
}

TEST(JsonText, NoNumberIsNullAndBrokenTextIsReplaced) {
  EXPECT_EQ(json_text(Json{std::nan(""), HUGE_VAL}), "[null,null]\n");
  const std::string mended = json_text(Json{"\xFF\xC0"});
  EXPECT_TRUE(Json::accept(mended)) << mended;
}
