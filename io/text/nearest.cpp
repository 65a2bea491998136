#include "io/text/nearest.h"

#include <algorithm>
#include <cctype>

namespace bedbow {

namespace {

constexpr std::size_t longest = 200; // longer texts are compared by their beginnings

bool same(char a, char b) {
  return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
}

} // namespace

int edit_distance(std::string_view a, std::string_view b) {
  a = a.substr(0, longest);
  b = b.substr(0, longest);
  std::vector<int> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      now[j] = std::min({last[j] + 1, now[j - 1] + 1, last[j - 1] + (same(a[i - 1], b[j - 1]) ? 0 : 1)});
      if (i > 1 && j > 1 && same(a[i - 1], b[j - 2]) && same(a[i - 2], b[j - 1]))
        now[j] = std::min(now[j], before[j - 2] + 1);
    }
    std::swap(before, last);
    std::swap(last, now);
  }
  return last[b.size()];
}

std::string nearest(std::string_view given, const std::vector<std::string>& candidates) {
  const auto best = std::ranges::min_element(candidates, {}, [&](const auto& c) { return edit_distance(given, c); });
  return best == candidates.end() ? std::string() : *best;
}

std::string probably_meant(std::string_view given, const std::vector<std::string>& candidates) {
  std::string best = nearest(given, candidates);
  const auto length = static_cast<int>(std::max(given.size(), best.size()));
  return 2 * edit_distance(given, best) <= length ? best : std::string();
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& w : words) out.append(out.empty() ? "" : ", ").append(w);
  return out;
}

} // namespace bedbow
