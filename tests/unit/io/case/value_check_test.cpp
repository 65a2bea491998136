#include "io/case/value_check.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace bedbow {
namespace {

CaseNode whole_number(double value, const std::string& text) {
  CaseNode n;
  n.type = CaseNode::Type::integer;
  n.number = value;
  n.text = text;
  return n;
}

CaseNode list_of(std::vector<CaseNode> items) {
  CaseNode n;
  n.type = CaseNode::Type::list;
  n.items = std::move(items);
  return n;
}

CaseNode text(const std::string& s) {
  return CaseNode::of_text(s);
}

/// Checks a valid value.
CaseValue right(const CaseNode& node, const KeySpec& spec) {
  ProblemList problems;
  CaseValue out = check_value(node, spec, "table.key", problems);
  EXPECT_TRUE(out.good);
  for (const Problem& p : problems.all()) ADD_FAILURE() << p.text;
  return out;
}

/// The only message about an invalid value.
std::string trouble(CaseNode node, const KeySpec& spec) {
  ProblemList problems;
  node.pos = {12, 8};
  const CaseValue out = check_value(node, spec, "table.key", problems);
  EXPECT_FALSE(out.good);
  if (problems.all().size() != 1) return std::to_string(problems.all().size()) + " messages";
  EXPECT_EQ(problems.all()[0].key, "table.key");
  EXPECT_EQ(problems.all()[0].pos.line, 12);
  return problems.all()[0].text;
}

const KeySpec width = length("width", "16 mm", "along y").positive();

TEST(ValueCheck, Quantities) {
  EXPECT_DOUBLE_EQ(right(text("5/8 in"), width).numbers.at(0), 0.015875);
  EXPECT_EQ(trouble(whole_number(16, "16"), width), "16 has no unit; expected a length, as in \"16 mm\"");
  EXPECT_EQ(trouble(text("16 N"), width), "\"16 N\" is a force; expected a length, as in \"16 mm\"");
  EXPECT_NE(trouble(text("0 mm"), width).find("must be greater than zero, as in width = \"16 mm\""), std::string::npos);
  EXPECT_NE(trouble(text("-1 mm"), length("gap", "1 mm", "").not_negative()).find("must not be negative"),
            std::string::npos);
  EXPECT_DOUBLE_EQ(right(text("0 mm"), length("gap", "1 mm", "").not_negative()).numbers.at(0), 0);
}

TEST(ValueCheck, EitherOfTwoKinds) {
  const KeySpec spec = quantity_key("stiffness", Dim::stiffness, "20 kN/mm", "").or_of(Dim::rotational_stiffness);
  EXPECT_FALSE(right(text("20 kN/mm"), spec).other_dim);
  const CaseValue turned = right(text("5 kN*m/rad"), spec);
  EXPECT_TRUE(turned.other_dim);
  EXPECT_DOUBLE_EQ(turned.numbers.at(0), 5000);
}

TEST(ValueCheck, BareNumbers) {
  const KeySpec nu = number_key("nu", "").between(-0.99, 0.499).like("0.3");
  EXPECT_DOUBLE_EQ(right(CaseNode::of_number(0.25), nu).numbers.at(0), 0.25);
  EXPECT_DOUBLE_EQ(right(CaseNode::of_number(0.499), nu).numbers.at(0), 0.499) << "bounds are inclusive";
  EXPECT_NE(trouble(CaseNode::of_number(0.5), nu).find("is not between -0.99 and 0.499"), std::string::npos);
  EXPECT_EQ(trouble(text("0.3"), nu), "\"0.3\" is a string; expected a bare number, as in nu = 0.3");
  CaseNode infinite = CaseNode::of_number(std::numeric_limits<double>::infinity());
  EXPECT_NE(trouble(infinite, nu).find("a number must be finite"), std::string::npos);
  const KeySpec count = integer_key("count", "").between(1, 10);
  EXPECT_EQ(right(whole_number(3, "3"), count).numbers.at(0), 3);
  EXPECT_NE(trouble(CaseNode::of_number(2.5), count).find("expected a bare whole number"), std::string::npos);
  CaseNode huge = whole_number(1e19, "10000000000000000001");
  huge.exact = false;
  EXPECT_EQ(trouble(huge, count), "10000000000000000001 is too large");
}

TEST(ValueCheck, Lists) {
  const KeySpec at = length("at", "40 mm", "").list(3, 3);
  EXPECT_EQ(right(list_of({text("1 m"), text("2 m"), text("3 m")}), at).numbers, (std::vector<double>{1, 2, 3}));
  EXPECT_NE(trouble(list_of({text("1 m")}), at).find("the list has 1 item; expected a list of 3, as in at = ["),
            std::string::npos);
  EXPECT_NE(trouble(text("1 m"), at).find("\"1 m\" is a string; expected a list of 3"), std::string::npos);
  EXPECT_NE(trouble(list_of({}), length("x", "1 mm", "").list()).find("expected a list of at least 1"),
            std::string::npos);
}

TEST(ValueCheck, ChoicesAndNames) {
  const KeySpec seat = choice_key("seat", {"washer", "plain"}, "");
  EXPECT_EQ(right(text("plain"), seat).texts.at(0), "plain");
  EXPECT_EQ(trouble(text("wascher"), seat), "\"wascher\" is not one of washer, plain; nearest is \"washer\"");
  const KeySpec name = name_key("name", "");
  EXPECT_EQ(right(text("left end"), name).texts.at(0), "left end");
  for (const char* wrong : {"", "a.b", "a\nb"})
    EXPECT_NE(trouble(text(wrong), name).find("is not a valid name"), std::string::npos) << wrong;
  EXPECT_NE(trouble(text(std::string(101, 'a')), name).find("is not a valid name"), std::string::npos);
}

TEST(ValueCheck, ThreadsAndGauges) {
  const KeySpec size = kind_key("size", ValueKind::thread, "").like("M8");
  const CaseValue thread = right(text("M8"), size);
  EXPECT_DOUBLE_EQ(thread.numbers.at(0), 0.008);
  EXPECT_EQ(thread.texts.at(0), "M8");
  const CaseValue plain = right(text("9 mm"), size);
  EXPECT_DOUBLE_EQ(plain.numbers.at(0), 0.009);
  EXPECT_TRUE(plain.texts.empty());
  EXPECT_NE(trouble(text("M9"), size).find("\"M9\" is not a valid thread size; known sizes:"), std::string::npos);
  const KeySpec sheet = kind_key("thickness", ValueKind::sheet, "").like("1.5 mm");
  EXPECT_EQ(right(text("16 ga"), sheet).gauge, 16);
  EXPECT_FALSE(right(text("1.5 mm"), sheet).gauge);
}

TEST(ValueCheck, BooleansAndUnits) {
  CaseNode yes;
  yes.type = CaseNode::Type::boolean;
  yes.flag = true;
  EXPECT_TRUE(right(yes, boolean_key("linked", "")).flag);
  EXPECT_NE(trouble(text("yes"), boolean_key("linked", "")).find("expected true or false"), std::string::npos);
  KeySpec unit = kind_key("length", ValueKind::unit, "");
  unit.dim = Dim::length;
  EXPECT_DOUBLE_EQ(right(text("in"), unit).numbers.at(0), 0.0254);
  EXPECT_NE(trouble(text("kg"), unit).find("is not a unit of length"), std::string::npos);
}

} // namespace
} // namespace bedbow
