#include "io/vtk/pvd.h"

#include "io/text/xml.h"

namespace bedbow {

std::string pvd(const std::vector<PvdEntry>& entries, const std::string& comment) {
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" +
                    (comment.empty() ? "" : "<!-- " + xml_text(comment) + " -->\n") +
                    "<VTKFile type=\"Collection\" version=\"0.1\" byte_order=\"LittleEndian\">\n <Collection>\n";
  for (std::size_t i = 0; i < entries.size(); ++i)
    out += "  <DataSet timestep=\"" + std::to_string(i) + "\" group=\"\" part=\"0\" file=\"" +
           xml_text(entries[i].file) + "\" name=\"" + xml_text(entries[i].name) + "\"/>\n";
  return out + " </Collection>\n</VTKFile>\n";
}

} // namespace bedbow
