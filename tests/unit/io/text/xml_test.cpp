#include "io/text/xml.h"

#include <gtest/gtest.h>

using bedbow::xml_text;

TEST(Xml, MarkupAndControlsAreHarmless) {
  EXPECT_EQ(xml_text("a<b> & \"c\" 'd' ü"), "a&lt;b&gt; &amp; &quot;c&quot; &#39;d&#39; ü");
  EXPECT_EQ(xml_text("\x01\xFF"), "??");
}
