#include "io/report/report.h"
#include "io/report/report_resources.h"
#include "io/results/summary.h"
#include "io/text/xml.h"

#include <sstream>

namespace bedbow {

namespace {

constexpr PlotSize wide{560, 340};   ///< shown at about this size, so that its text is as large as the page's notes
constexpr PlotSize narrow{360, 330}; ///< for a telephone, and two in a row on paper

/// Writes elements; text is escaped.
class Page {
public:
  Page& raw(std::string_view html) {
    out_ += html;
    return *this;
  }
  Page& element(const std::string& tag, std::string_view text, const std::string& attributes = "") {
    out_ += "<" + tag + (attributes.empty() ? "" : " " + attributes) + ">" + xml_text(text) + "</" + tag + ">\n";
    return *this;
  }
  Page& list(const std::vector<std::string>& items) {
    out_ += "<ul>\n";
    for (const std::string& i : items) element("li", i);
    out_ += "</ul>\n";
    return *this;
  }
  [[nodiscard]] std::string take() { return std::move(out_); }

private:
  std::string out_;
};

/// Line by line, since escaping treats line breaks as control characters.
std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

void head(Page& page, const Report& r) {
  page.raw("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
           "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
           "script-src 'unsafe-inline'; img-src data: blob:\">\n"
           "<meta name=\"color-scheme\" content=\"light dark\">\n");
  page.element("title", r.title + " - bedbow report");
  page.raw("<style>\n").raw(report_style()).raw("</style>\n</head>\n<body>\n");
}

void answer(Page& page, const Report& r) {
  page.raw("<header>\n").element("h1", r.title);
  const char* look = R"(id="answer" class="answer")";
  if (r.pass) look = *r.pass ? R"(id="answer" class="answer pass")" : R"(id="answer" class="answer fail")";
  page.element("p", r.answer, look);
  if (r.reasons.size() > 1) { // a single one is part of the answer
    page.raw("<ol id=\"reasons\">\n");
    for (const std::string& reason : r.reasons) page.element("li", reason);
    page.raw("</ol>\n");
  }
  page.raw("</header>\n<main>\n");
}

void checks(Page& page, const Report& r) {
  if (r.checks.empty()) return;
  page.raw("<section id=\"checks\">\n").element("h2", r.checks_heading);
  page.raw(
      "<div class=\"scroll\"><table>\n<thead><tr>"
      "<th scope=\"col\">what</th><th scope=\"col\" class=\"number\">found</th><th scope=\"col\" "
      "class=\"number\">limit</th><th scope=\"col\">result</th><th scope=\"col\">where</th></tr></thead>\n<tbody>\n");
  for (const ReportCheck& c : r.checks) {
    const bool pass = c.outcome == ReportCheck::Outcome::pass;
    const bool no_limit = c.outcome == ReportCheck::Outcome::no_limit;
    page.raw("<tr>").element("th", c.what, "scope=\"row\"").element("td", c.found, "class=\"number\"");
    page.element("td", c.limit, "class=\"number\"");
    page.element("td", no_limit ? "no limit set" : (pass ? "\u2713 pass" : "\u2717 over the limit"),
                 no_limit ? "" : (pass ? "class=\"good\"" : "class=\"bad\""));
    page.element("td", c.where).raw("</tr>\n");
  }
  page.raw("</tbody></table></div>\n");
  if (!r.checks_note.empty()) page.element("p", r.checks_note, "class=\"note\"");
  page.raw("</section>\n");
}

void mind(Page& page, const Report& r) {
  page.raw("<section id=\"mind\" class=\"caution\">\n<h2>Warnings and limitations</h2>\n");
  if (!r.warnings.empty()) page.list(r.warnings);
  for (const std::string& line : cautions()) page.element("p", line);
  page.raw("</section>\n");
}

void table(Page& page, const ReportTable& t) {
  page.raw("<div class=\"scroll\"><table>\n");
  if (!t.title.empty()) page.element("caption", t.title);
  const auto& columns = t.table.columns();
  const auto number = [&](std::size_t i) { return columns[i].align == Align::right; };
  page.raw("<thead><tr>");
  for (std::size_t i = 0; i < columns.size(); ++i)
    page.element("th", columns[i].head, number(i) ? R"(scope="col" class="number")" : R"(scope="col")");
  page.raw("</tr></thead>\n<tbody>\n");
  for (const auto& row : t.table.rows()) {
    page.raw("<tr>");
    for (std::size_t i = 0; i < row.size(); ++i) {
      std::string attributes = i == 0 ? R"(scope="row" class=")" : R"(class=")";
      attributes += number(i) ? "number" : "text";
      if (row[i].mark != Mark::none) attributes += row[i].mark == Mark::bad ? " bad" : " good";
      page.element(i == 0 ? "th" : "td", row[i].text, attributes + "\"");
    }
    page.raw("</tr>\n");
  }
  page.raw("</tbody></table></div>\n");
  if (!t.note.empty()) page.element("p", t.note, "class=\"note\"");
}

/// Each plot twice, for wide and narrow windows; the style shows one of them.
void plots(Page& page, const std::vector<Plot>& list, std::size_t& number) {
  for (const Plot& p : list) {
    page.raw("<figure class=\"plotbox\" data-plot=\"" + std::to_string(number++) + "\">\n");
    page.raw("<div class=\"wide\">" + plot_svg(p, wide) + "</div><div class=\"narrow\">" + plot_svg(p, narrow) +
             "</div>\n<figcaption class=\"reading\" aria-live=\"polite\"></figcaption>\n</figure>\n");
  }
}

/// Shaded pictures, likewise for wide and narrow windows.
void maps(Page& page, const std::vector<HeatMap>& list) {
  for (const HeatMap& m : list)
    page.raw("<figure class=\"mapbox\">\n<div class=\"wide\">" + heat_map_svg(m) + "</div><div class=\"narrow\">" +
             heat_map_svg(m, HeatMapSize::narrow) + "</div>\n</figure>\n");
}

void section(Page& page, const ReportSection& s, std::size_t& plot_number) {
  page.raw("<section>\n").element("h2", s.heading);
  for (const std::string& t : s.text) page.element("p", t);
  maps(page, s.maps);
  if (!s.plots.empty()) page.raw("<div class=\"plots\">\n");
  plots(page, s.plots, plot_number);
  if (!s.plots.empty()) page.raw("</div>\n");
  for (const ReportTable& t : s.tables) table(page, t);
  for (const ReportList& l : s.lists) page.element("p", l.title, "class=\"note\"").list(l.items);
  if (!s.listing.empty()) {
    page.raw(s.folded ? "<details>" : "<details open>").raw("<summary>Show as text</summary>\n<pre tabindex=\"0\">");
    for (const std::string& line : lines_of(s.listing)) page.raw(xml_text(line) + "\n");
    page.raw("</pre></details>\n");
  }
  page.raw("</section>\n");
}

void machine(Page& page, const Report& r) {
  if (r.scenes.empty()) return;
  page.raw("<section id=\"machine\">\n").element("h2", r.machine_heading);
  page.raw("<div id=\"viewer\"><p class=\"note\">The machine in 3D "
           "appears here where scripts and WebGL2 are allowed. Plots and tables below are complete without it."
           "</p></div>\n</section>\n");
}

void foot(Page& page, const Report& r) {
  if (!r.assumptions.empty()) page.raw("<section>\n<h2>Assumptions</h2>\n").list(r.assumptions).raw("</section>\n");
  page.raw("</main>\n<footer>\n");
  page.element("p", "bedbow " + r.stamp.version + (r.stamp.case_sha256.empty() ? "" : ", case file SHA-256 ") +
                        r.stamp.case_sha256);
  page.raw("</footer>\n<script type=\"application/json\" id=\"data\">")
      .raw(report_data(r))
      .raw("</script>\n<script>\n");
  page.raw(report_script()).raw("</script>\n</body>\n</html>\n");
}

} // namespace

std::string report_html(const Report& r) {
  Page page;
  head(page, r);
  answer(page, r);
  checks(page, r);
  mind(page, r);
  std::size_t plot_number = 0;
  for (std::size_t i = 0; i < r.sections.size(); ++i) {
    if (i == r.before_machine) machine(page, r);
    section(page, r.sections[i], plot_number);
  }
  if (r.before_machine >= r.sections.size()) machine(page, r);
  foot(page, r);
  return page.take();
}

} // namespace bedbow
