#include "io/vtk/pvd.h"

#include <gtest/gtest.h>

TEST(Pvd, StepsInOrderWithTheirNames) {
  EXPECT_EQ(bedbow::pvd({{"a_0.vtu", "clamp"}, {"a_1.vtu", "bend <90>"}}),
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
            "<VTKFile type=\"Collection\" version=\"0.1\" byte_order=\"LittleEndian\">\n <Collection>\n"
            "  <DataSet timestep=\"0\" group=\"\" part=\"0\" file=\"a_0.vtu\" name=\"clamp\"/>\n"
            "  <DataSet timestep=\"1\" group=\"\" part=\"0\" file=\"a_1.vtu\" name=\"bend &lt;90&gt;\"/>\n"
            " </Collection>\n</VTKFile>\n");
}
